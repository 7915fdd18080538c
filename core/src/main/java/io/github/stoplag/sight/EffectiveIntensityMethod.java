package io.github.stoplag.sight;

/**
 * A published way to give a flash the intensity of the steady light that is as hard to see.
 *
 * <p>For a rectangular flash of intensity I and duration T all but the original Allard method give I T/(a + T).
 */
public interface EffectiveIntensityMethod {
    /**
     * Names the method with its parameters, as every result repeats it.
     *
     * @return the name, for example {@code Blondel-Rey-Douglas, a = 0.2 s}
     */
    String name();

    /**
     * Works out the effective intensity of a flash.
     *
     * @param flash the flash, seen once from the dark
     * @return the effective intensity
     */
    EffectiveIntensity of(Flash flash);
}
