package io.github.stoplag.worked;

/** The exponents of the five base quantities in a unit: length, mass, time, electric current, temperature. */
record Dimension(int length, int mass, int time, int current, int temperature) {
    static final Dimension NONE = new Dimension(0, 0, 0, 0, 0);

    Dimension times(Dimension other) {
        return new Dimension(
                length + other.length,
                mass + other.mass,
                time + other.time,
                current + other.current,
                temperature + other.temperature);
    }

    Dimension over(Dimension other) {
        return times(other.power(-1));
    }

    Dimension power(int n) {
        return new Dimension(n * length, n * mass, n * time, n * current, n * temperature);
    }

    Dimension root() {
        if ((length % 2 | mass % 2 | time % 2 | current % 2 | temperature % 2) != 0) {
            throw new IllegalArgumentException("a square root needs a square under it, got " + this);
        }
        return new Dimension(length / 2, mass / 2, time / 2, current / 2, temperature / 2);
    }

    @Override
    public String toString() {
        String text =
                part("m", length) + part("kg", mass) + part("s", time) + part("A", current) + part("K", temperature);
        return text.isEmpty() ? "a plain number" : text.trim();
    }

    private static String part(String base, int exponent) {
        return exponent == 0 ? "" : exponent == 1 ? base + " " : base + "^" + exponent + " ";
    }
}
