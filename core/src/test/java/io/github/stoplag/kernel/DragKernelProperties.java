package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class DragKernelProperties {
    @Property(seed = "42")
    void tendsToConstantDecelerationAsDragVanishes(
            @ForAll @DoubleRange(min = 1, max = 100) double from,
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll @DoubleRange(min = 0.1, max = 12) double decel,
            @ForAll @DoubleRange(min = 16, max = 300) double smallness) {
        double drag = Math.pow(10, -smallness);
        double to = share * from;
        double distance = (from - to) * (from + to) / (2 * decel);
        assertThat(DragKernel.distanceM(from, to, decel, drag)).isCloseTo(distance, within(1e-10 * (1 + distance)));
        double time = (from - to) / decel;
        assertThat(DragKernel.timeS(from, to, decel, drag)).isCloseTo(time, within(1e-10 * (1 + time)));
    }

    @Property(seed = "42")
    void dragShortensAndSpeedAtDistanceGoesBack(
            @ForAll @DoubleRange(min = 1, max = 100) double from,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double share,
            @ForAll @DoubleRange(min = 0.1, max = 12) double decel,
            @ForAll @DoubleRange(min = 2, max = 6) double smallness) {
        double drag = Math.pow(10, -smallness);
        double to = share * from;
        double distance = DragKernel.distanceM(from, to, decel, drag);
        double time = DragKernel.timeS(from, to, decel, drag);
        assertThat(distance).isLessThan(DragKernel.distanceM(from, to, decel, 0));
        assertThat(time).isLessThan(DragKernel.timeS(from, to, decel, 0));
        assertThat(distance / time).isBetween(to, from);
        assertThat(DragKernel.speedAtDistanceMps(from, distance, decel, drag)).isCloseTo(to, within(1e-9 * from));
        assertThat(DragKernel.speedAtTimeMps(from, time, decel, drag)).isCloseTo(to, within(1e-9 * from));
    }

    @Property(seed = "42")
    void adjoiningStretchesAddUp(
            @ForAll @DoubleRange(min = 1, max = 100) double from,
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll @DoubleRange(min = 0.1, max = 12) double decel,
            @ForAll @DoubleRange(min = 2, max = 20) double smallness) {
        double drag = Math.pow(10, -smallness);
        double middle = share * from;
        assertThat(DragKernel.distanceM(from, middle, decel, drag) + DragKernel.distanceM(middle, 0, decel, drag))
                .isCloseTo(DragKernel.distanceM(from, 0, decel, drag), within(1e-9 * from * from));
        assertThat(DragKernel.timeS(from, middle, decel, drag) + DragKernel.timeS(middle, 0, decel, drag))
                .isCloseTo(DragKernel.timeS(from, 0, decel, drag), within(1e-9 * from));
    }
}
