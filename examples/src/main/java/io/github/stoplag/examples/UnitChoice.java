package io.github.stoplag.examples;

import io.github.stoplag.worked.UnitSystem;
import java.util.List;

/** The units a program is asked to work in. */
enum UnitChoice {
    METRIC,
    US,
    BOTH;

    List<UnitSystem> systems() {
        return switch (this) {
            case METRIC -> List.of(UnitSystem.METRIC);
            case US -> List.of(UnitSystem.US_CUSTOMARY);
            case BOTH -> List.of(UnitSystem.METRIC, UnitSystem.US_CUSTOMARY);
        };
    }
}
