package io.github.stoplag.examples.spark;
/** Placeholder. */
final class SparkSweepCommand {}
