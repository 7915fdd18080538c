package io.github.stoplag.examples.program;

import io.github.stoplag.worked.UnitSystem;
import java.util.List;

/** The units a program is asked to work in. */
public enum UnitChoice {
    METRIC,
    UK,
    US,
    BOTH;

    public List<UnitSystem> systems() {
        return switch (this) {
            case METRIC -> List.of(UnitSystem.METRIC);
            case UK -> List.of(UnitSystem.BRITISH);
            case US -> List.of(UnitSystem.US_CUSTOMARY);
            case BOTH -> List.of(UnitSystem.METRIC, UnitSystem.US_CUSTOMARY);
        };
    }
}
