package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

/** What must not be read, and the line that says so: quantity, what is wrong, which units there are. */
class UnitTextRefusalTest {
    private static final String SPEEDS = "; use one of m/s, km/h, mph, ft/s, kn";
    private static final String DISTANCES = "; use one of m, km, cm, mm, ft, in, yd, mi";
    private static final String TIMES = "; use one of s, ms, min, h";
    private static final String COMMA = "a comma is not allowed; write a decimal point, and no mark between thousands";
    private static final String NUMBER = "not a number followed by a unit; write it like 1.5 or 1.5e-3";

    private static void refuses(Units units, String text, String reason) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> units.parseSi(text))
                .withMessage(units.quantity() + " \"" + text + "\": " + reason);
    }

    @Test
    void unitsThatDoNotFitAreNamed() {
        refuses(Units.SPEED, "60 mhp", "unknown unit \"mhp\"" + SPEEDS);
        refuses(Units.SPEED, "60", "missing unit" + SPEEDS);
        refuses(Units.SPEED, "60 feet", "\"feet\" is a unit of distance" + SPEEDS);
        refuses(Units.POWER, "21", "missing unit; use one of W, mW, kW");
        refuses(Units.GRADE, "5 m", "\"m\" is a unit of distance; use one of %, deg or a plain number");
        refuses(Units.FRICTION_COEFFICIENT, "70 %", "\"%\" is a unit of grade; use a plain number");
        refuses(Units.LUMINOUS_INTENSITY, "5 lm", "\"lm\" is a unit of luminous flux; use one of cd, mcd");
        refuses(Units.TEMPERATURE, "20 deg", "\"deg\" is a unit of grade; use one of K, °C (degC), °F (degF)");
    }

    @Test
    void anotherCaseThatMayBeAnotherUnitIsRefused() {
        refuses(Units.DISTANCE, "5 M", "unknown unit \"M\", capitals matter in m" + DISTANCES);
        refuses(Units.DISTANCE, "5 MM", "unknown unit \"MM\", capitals matter in mm" + DISTANCES);
        refuses(Units.TIME, "5 S", "unknown unit \"S\", capitals matter in s" + TIMES);
        refuses(Units.TIME, "5 MS", "unknown unit \"MS\", capitals matter in ms" + TIMES);
        refuses(Units.SPEED, "5 M/S", "unknown unit \"M/S\", capitals matter in m/s" + SPEEDS);
        refuses(Units.SPEED, "5 kN", "unknown unit \"kN\", capitals matter in kn" + SPEEDS);
        refuses(Units.POWER, "5 MW", "unknown unit \"MW\", capitals matter in mW; use one of W, mW, kW");
        refuses(Units.VOLTAGE, "5 MV", "unknown unit \"MV\", capitals matter in mV; use one of V, mV");
        refuses(
                Units.TEMPERATURE,
                "300 k",
                "unknown unit \"k\", capitals matter in K; use one of K, °C (degC), °F (degF)");
        // the Kelvin sign U+212A is a capital of k elsewhere
        refuses(Units.SPEED, "5 \u212amh", "unknown unit \"\u212amh\"" + SPEEDS);
    }

    @Test
    void signsThatMeanSeveralThingsAreRefused() {
        refuses(Units.GRADE, "5°", "unknown unit \"°\"; use one of %, deg or a plain number");
        refuses(Units.TEMPERATURE, "5°", "unknown unit \"°\"; use one of K, °C (degC), °F (degF)");
        refuses(Units.MASS, "2 tons", "unknown unit \"tons\"; use one of kg, t, lb");
        refuses(Units.SPEED, "5 mps", "unknown unit \"mps\"" + SPEEDS);
    }

    @Test
    void numbersThatCouldBeMisreadAreRefused() {
        for (String text : new String[] {"1,5 m", "1,500 m", "1.500,5 m", "8 ft, 10 in", ",5 m"}) {
            refuses(Units.DISTANCE, text, COMMA + DISTANCES);
        }
        for (String text : new String[] {
            "1 500 m",
            "1.5.2 m",
            "5. m",
            "fast",
            "NaN m",
            "Infinity m",
            "١٥ m",
            "१५ m",
            "１５ m",
            "+ 5 m",
            "--5 m",
            "5-6 m",
            "m",
            ".",
            "٫5 m"
        }) {
            refuses(Units.DISTANCE, text, NUMBER + DISTANCES);
        }
        refuses(Units.DISTANCE, "1_000 m", "unknown unit \"_000 m\"" + DISTANCES);
        refuses(Units.DISTANCE, " ", "no value given" + DISTANCES);
        refuses(Units.TIME, "60d", "unknown unit \"d\"" + TIMES);
        refuses(Units.TIME, "0x1p3 s", "unknown unit \"x1p3 s\"" + TIMES);
        refuses(Units.TIME, "5e s", "unknown unit \"e s\"" + TIMES);
    }

    @Test
    void feetBesideInchesAreStrict() {
        refuses(Units.DISTANCE, "8 ft 12 in", "inches beside feet must be in [0, 12), got 12");
        String whole = "feet beside inches must be a whole number, and inches like 10 or 10.5";
        refuses(Units.DISTANCE, "8.5 ft 10 in", whole);
        refuses(Units.DISTANCE, "8e1 ft 10 in", whole);
        refuses(Units.DISTANCE, "8 ft -10 in", whole);
        refuses(Units.DISTANCE, "8 ft 1e1 in", whole);
        String mark = "inches beside feet need their unit; write it like 8 ft 10 in or 8' 10\"";
        refuses(Units.DISTANCE, "8'10", mark);
        refuses(Units.DISTANCE, "0'7", mark);
        refuses(Units.DISTANCE, "1'500 m", mark);
        refuses(Units.DISTANCE, "8 ft 10 cm", mark);
        refuses(Units.SPEED, "8 ft 10 in", "feet and inches are a distance" + SPEEDS);
    }

    @Test
    void whatIsShownOfATextIsShortAndPrintable() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Distance.parse("1\n2\tm\u202e"))
                .withMessage("distance \"1 2 m\\u202e\": " + NUMBER + DISTANCES);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Distance.parse("9".repeat(300) + " m"))
                .withMessage("distance \"" + "9".repeat(80) + "…\": longer than 200 characters" + DISTANCES);
    }

    @Test
    void valuesOutOfRangeKeepTheTypesMessage() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Speed.parse("600 mph"))
                .withMessage("speed must be in [0, 150] m/s, got 268.224 m/s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Speed.parse("1e999 m/s"))
                .withMessage("speed must be in [0, 150] m/s, got Infinity m/s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Grade.parse("5"))
                .withMessage("grade must be in [-1, 1], got 5");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Grade.parse("180 deg"))
                .withMessage("slope must be in [-45, 45] °, got 180 °");
    }
}
