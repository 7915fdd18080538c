package io.github.stoplag.sight;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Validity;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The luminous intensity of the steady light that is as hard to see as a flash.
 *
 * @param intensity the effective intensity
 * @param method the method with its parameters
 * @param evidence what it rests on and how far it holds
 */
public record EffectiveIntensity(LuminousIntensity intensity, String method, Evidence evidence) implements Evident {
    private static final Caveat AT_THRESHOLD = new Caveat(
            "effective intensity is defined for a flash just seen: above the threshold of illuminance no method"
                    + " is adequate (IALA recommendation E-200-4, 2008, recital, seen)");
    private static final Validity DURATION = new Validity(
            "flash duration", 0.001, 3, "s", Source.seen("Blondel and Rey, J. Phys. Theor. Appl. 1 (1911)", "p. 548"));
    private static final Validity TIME_CONSTANT = new Validity(
            "time constant of the eye", 0.1, 0.3, "s", Source.seen("IALA dictionary", "Blondel-Rey law, range in use"));

    /**
     * Refuses nulls.
     *
     * @param intensity the effective intensity
     * @param method the method with its parameters
     * @param evidence what it rests on and how far it holds
     * @throws NullPointerException if one that is required is null
     */
    public EffectiveIntensity {
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(intensity, "intensity");
        Objects.requireNonNull(method, "method");
    }

    static EffectiveIntensity of(double cd, String method, TimeSpan timeConstant, Flash flash) {
        List<Caveat> caveats = new ArrayList<>();
        caveats.add(AT_THRESHOLD);
        caveats.addAll(timeConstantCaveats(timeConstant));
        DURATION.check(flash.duration().inSeconds()).ifPresent(caveats::add);
        return new EffectiveIntensity(
                LuminousIntensity.candela(cd),
                method,
                Evidence.of("effective intensity by " + method).withCaveats(caveats));
    }

    static List<Caveat> timeConstantCaveats(TimeSpan timeConstant) {
        return TIME_CONSTANT.check(timeConstant.inSeconds()).stream().toList();
    }
}
