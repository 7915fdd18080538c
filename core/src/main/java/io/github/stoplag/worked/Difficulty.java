package io.github.stoplag.worked;

/** How much an exercise asks for. */
public enum Difficulty {
    /** One formula and at most one conversion. */
    BASIC,
    /** Several steps. */
    STANDARD,
    /** Several steps of which one must be found, or a result against intuition. */
    ADVANCED
}
