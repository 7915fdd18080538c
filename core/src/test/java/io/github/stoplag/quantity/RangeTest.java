package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RangeTest {
    private static final Range CLOSED = Range.closed("reaction time", 0, 30, "s");
    private static final Range ABOVE = Range.above("gap share", 0, 1, "");

    @Test
    void endsAreInUnlessOpen() {
        assertThat(CLOSED.check(0)).isZero();
        assertThat(CLOSED.check(30)).isEqualTo(30);
        assertThat(ABOVE.check(Double.MIN_VALUE)).isEqualTo(Double.MIN_VALUE);
        assertThat(ABOVE.contains(0)).isFalse();
        assertThat(CLOSED.contains(Math.nextUp(30.0))).isFalse();
        assertThat(CLOSED.contains(Math.nextDown(0.0))).isFalse();
    }

    @Test
    void messageNamesQuantityRangeUnitAndValue() {
        assertThatThrownBy(() -> CLOSED.check(-1.2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("reaction time must be in [0, 30] s, got -1.2 s");
        assertThatThrownBy(() -> CLOSED.check("time to decide", Double.NaN))
                .hasMessage("time to decide must be in [0, 30] s, got NaN s");
        assertThatThrownBy(() -> ABOVE.check("share", 0)).hasMessage("share must be in (0, 1], got 0");
        assertThatThrownBy(() -> CLOSED.withoutLowerEnd().check(0))
                .hasMessage("reaction time must be in (0, 30] s, got 0 s");
    }

    @Test
    void sameMessageAsAnUnnamedCheck() {
        for (double value : new double[] {-1, 31, Double.NaN, Double.POSITIVE_INFINITY, 1e300}) {
            assertThatThrownBy(() -> CLOSED.check(value)).hasMessage(messageOf(value));
        }
    }

    private static String messageOf(double value) {
        try {
            Check.inRange("reaction time", value, 0, 30, "s");
            return "none";
        } catch (IllegalArgumentException e) {
            return String.valueOf(e.getMessage());
        }
    }

    @Test
    void boundsMustBeInOrder() {
        assertThatThrownBy(() -> Range.closed("x", 1, Double.NaN, ""))
                .hasMessage("range of x must have lo < hi, got 1 and NaN");
        assertThatThrownBy(() -> Range.above("x", 2, 2, "")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void everyNamedRangeRefusesWhatLiesOutsideAndNaN() throws IllegalAccessException {
        List<String> names = new ArrayList<>();
        for (Field field : Ranges.class.getFields()) {
            Range range = (Range) field.get(null);
            names.add(range + " " + range.name());
            assertThat(range.contains(range.hi())).as(field.getName()).isTrue();
            assertThat(range.contains(range.lo())).as(field.getName()).isNotEqualTo(range.open());
            assertThat(range.contains(Math.nextUp(range.hi())))
                    .as(field.getName())
                    .isFalse();
            assertThat(range.contains(Math.nextDown(range.lo())))
                    .as(field.getName())
                    .isFalse();
            assertThat(range.contains(Double.NaN)).as(field.getName()).isFalse();
        }
        assertThat(names).doesNotHaveDuplicates().hasSizeGreaterThan(20);
    }
}
