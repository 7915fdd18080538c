package io.github.stoplag.worked;

import java.util.HashMap;
import java.util.Map;

/**
 * The exponents of the base quantities in a unit: length, mass, time, electric current, temperature, light and solid
 * angle.
 */
record Dimension(int length, int mass, int time, int current, int temperature, int intensity, int angle) {
    static final Dimension NONE = new Dimension(0, 0, 0, 0, 0, 0, 0);

    /** Reads powers of base units such as {@code kg m2 s-3 A-1}. */
    static Dimension of(String baseUnits) {
        Map<String, Integer> powers = new HashMap<>();
        for (String each : baseUnits.isEmpty() ? new String[0] : baseUnits.split(" ", -1)) {
            String base = each.replaceAll("[-0-9]", "");
            String power = each.substring(base.length());
            powers.put(base, power.isEmpty() ? 1 : Integer.parseInt(power));
        }
        return new Dimension(
                powers.getOrDefault("m", 0),
                powers.getOrDefault("kg", 0),
                powers.getOrDefault("s", 0),
                powers.getOrDefault("A", 0),
                powers.getOrDefault("K", 0),
                powers.getOrDefault("cd", 0),
                powers.getOrDefault("sr", 0));
    }

    /**
     * Whether it is a length and no mass, current, temperature or light is in it, so that feet may stand for metres.
     */
    boolean isOfMotion() {
        return length != 0 && mass == 0 && current == 0 && temperature == 0 && intensity == 0 && angle == 0;
    }

    Dimension times(Dimension other) {
        return new Dimension(
                length + other.length,
                mass + other.mass,
                time + other.time,
                current + other.current,
                temperature + other.temperature,
                intensity + other.intensity,
                angle + other.angle);
    }

    Dimension over(Dimension other) {
        return times(other.power(-1));
    }

    Dimension power(int n) {
        return new Dimension(n * length, n * mass, n * time, n * current, n * temperature, n * intensity, n * angle);
    }

    Dimension root() {
        if ((length % 2 | mass % 2 | time % 2 | current % 2 | temperature % 2 | intensity % 2 | angle % 2) != 0) {
            throw new IllegalArgumentException("a square root needs a square under it, got " + this);
        }
        return new Dimension(length / 2, mass / 2, time / 2, current / 2, temperature / 2, intensity / 2, angle / 2);
    }

    @Override
    public String toString() {
        String text = part("m", length)
                + part("kg", mass)
                + part("s", time)
                + part("A", current)
                + part("K", temperature)
                + part("cd", intensity)
                + part("sr", angle);
        return text.isEmpty() ? "a plain number" : text.trim();
    }

    private static String part(String base, int exponent) {
        return exponent == 0 ? "" : exponent == 1 ? base + " " : base + "^" + exponent + " ";
    }
}
