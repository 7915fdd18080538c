package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Every double at a public face says its unit in its name (parameters, results, record components, constants), is a
 * plain number by a name that says so, or has its unit beside it. The kernel knows the first way alone.
 */
class UnitSuffixTest {
    private static final String SUFFIXES = "Mps|Mps2|Mps3|S|S2|M|M2|Mm2|Nm|Ratio|Ratios|K|C|V|A|W|Wh|Ohm|OhmM|Cd|Lm|Lx"
            + "|Sr|Kg|J|N|Ns|Hz|Percent|PerS|PerM|PerM3|PerK|PerW|PerKgK|PerMinute|PerSecond|PerYear|PerLumen";
    private static final Pattern CAMEL =
            Pattern.compile(".*[a-z0-9](" + SUFFIXES + ")|volts|amperes|hours|perMinute|arcMinutes");
    // constants are written as GRAZING_M
    private static final Pattern CONSTANT =
            Pattern.compile(".*_(" + SUFFIXES.toUpperCase(Locale.ROOT) + "|RATIO|PER_[A-Z]+)");

    /** Last words of names that say a plain number, whatever stands before them. */
    private static final Pattern PLAIN =
            Pattern.compile("(?i).*(ratio|share|probability|confidence|cdf|exponent|exponentLow|exponentHigh|multiple"
                    + "|factor|contrast|transmission|slip|slipAtPeak|utilization|relativeIntensity|relativeToRated"
                    + "|relativeToTail|stopToTail|sumToTail|modulationDepth|checkLevel|shareResponded|gamma|signal|light|grey"
                    + "|clipped|coverage|unevenness|exposurePlace|rows?|dimmest|brightest|whileWarming|state)");
    /** Plain numbers by the letter or the word that the source gives them. */
    private static final Set<String> AS_IN_THE_SOURCE = Set.of(
            "SlipCurve c1",
            "SlipCurve c2",
            "SlipCurve c3",
            "LogNormalReaction mu",
            "LogNormalReaction sigma",
            "StopTailRatio least");
    /** Names in a sweep, which are in the unit of a column, an axis or a measurand, or plain numbers by themselves. */
    private static final Pattern OF_A_COLUMN = Pattern.compile(
            "values?|lo|hi|low|high|middle|levels|at|column|inputs|outputs|observations|of|bound|edge|min|max|mean|variance"
                    + "|standardDeviation|standardUncertainty|contribution|estimate|difference|tolerance|loScatter|hiScatter"
                    + "|quantile|upperQuantile|exceedance|parameters|mu|sigma|rho|uniform|first|total"
                    + "|(first|total)StandardError|varianceReduction|shareUpTo|drawsForStableEnds|RELATIVE_ERROR"
                    + "|degreesOfFreedom|coefficient|correlation(With)?|expanded|scale|peak|inexactness|readings");
    /** Types whose numbers are in a unit that they carry themselves, or that their row has; grey values have none. */
    private static final Set<String> UNIT_BESIDE = Set.of(
            "Check",
            "Range",
            "Numbers",
            "Units",
            "NamedUnit",
            "Validity",
            "PublishedRange",
            "Table",
            "PublishedRow",
            "Residual",
            "FrictionRule",
            "HeadwayRule",
            "Amount",
            "Given",
            "Expression",
            "GreyScale",
            "GreySeries");

    private final Set<String> bare = new TreeSet<>();
    private int seen;

    @Test
    void everyPublicDoubleCarriesItsUnit() {
        for (Class<?> type : PublicApi.publicTypes()) {
            for (Executable constructor : type.getConstructors()) {
                checkParameters(constructor);
            }
            for (Method method : type.getDeclaredMethods()) {
                if (Modifier.isPublic(method.getModifiers()) && !method.isSynthetic()) {
                    checkParameters(method);
                    check(method.getReturnType(), method, method.getName(), CAMEL);
                }
            }
            for (Field field : type.getFields()) {
                boolean constant = Modifier.isStatic(field.getModifiers());
                check(field.getType(), field, field.getName(), constant ? CONSTANT : CAMEL);
            }
        }
        assertThat(bare)
                .as("doubles without a unit suffix from %s or a name of a plain number", SUFFIXES)
                .isEmpty();
        assertThat(seen).as("doubles looked at").isGreaterThan(500);
    }

    @Test
    void theRuleFindsABareDouble() {
        assertThat(CAMEL.matcher("speedMps").matches()).isTrue();
        assertThat(CAMEL.matcher("speed").matches()).isFalse();
        assertThat(CAMEL.matcher("distanceMetres").matches()).isFalse();
        assertThat(CONSTANT.matcher("GRAZING").matches()).isFalse();
        assertThat(PLAIN.matcher("duration").matches()).isFalse();
        assertThat(PLAIN.matcher("speed").matches()).isFalse();
        assertThat(OF_A_COLUMN.matcher("gap").matches()).isFalse();
    }

    private void checkParameters(Executable executable) {
        for (Parameter parameter : executable.getParameters()) {
            assertThat(parameter.isNamePresent())
                    .as("compiled with -parameters")
                    .isTrue();
            check(parameter.getType(), executable, parameter.getName(), CAMEL);
        }
    }

    private void check(Class<?> type, Member member, String name, Pattern pattern) {
        if (type != double.class && type != double[].class && type != OptionalDouble.class) {
            return;
        }
        seen++;
        Class<?> owner = member.getDeclaringClass();
        boolean told = pattern.matcher(name).matches()
                || switch (owner.getPackageName().substring("io.github.stoplag.".length())) {
                    case "kernel" -> false;
                    case "quantity" -> saysItself(member, name) || hasUnitBeside(owner, name);
                    case "chance", "sweep" -> OF_A_COLUMN.matcher(name).matches() || hasUnitBeside(owner, name);
                    default -> hasUnitBeside(owner, name);
                };
        if (!told) {
            bare.add(owner.getSimpleName() + " " + name + " in " + member.getName());
        }
    }

    /**
     * Of a value type: {@code inMetres()}, {@code kmh(double kmh)}, {@code feetAndInches(double feet, double inches)}.
     */
    private static boolean saysItself(Member member, String name) {
        return name.matches("in[A-Z].*")
                || (member.getName().toLowerCase(Locale.ROOT).contains(name.toLowerCase(Locale.ROOT))
                        && Modifier.isStatic(member.getModifiers()));
    }

    private static boolean hasUnitBeside(Class<?> owner, String name) {
        return PLAIN.matcher(name).matches()
                || AS_IN_THE_SOURCE.contains(owner.getSimpleName() + " " + name)
                || UNIT_BESIDE.contains(outermost(owner).getSimpleName());
    }

    private static Class<?> outermost(Class<?> type) {
        Class<?> around = type.getEnclosingClass();
        return around == null ? type : outermost(around);
    }
}
