package io.github.stoplag.quantity;

/** A slope in degrees: its ratio is a tangent, so no factor turns one into the other. */
final class SlopeDegrees extends NamedUnit {
    SlopeDegrees() {
        super("deg", "1", "0");
    }

    @Override
    public boolean isLinear() {
        return false;
    }

    @Override
    public double toSi(double number) {
        // checks the angle: the tangent repeats every half turn, so 180 deg would pass for a level road
        return Grade.degrees(number).inRatio();
    }

    @Override
    public double fromSi(double si) {
        return Grade.ratio(si).inDegrees();
    }
}
