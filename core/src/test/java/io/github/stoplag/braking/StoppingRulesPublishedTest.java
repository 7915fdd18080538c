package io.github.stoplag.braking;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import java.util.List;

/** Published stopping tables against the rules that print them. */
class StoppingRulesPublishedTest extends PublishedTableTest {
    @Override
    protected List<String> tables() {
        return List.of("aashto_level_us.csv", "aashto_level_metric.csv", "uk_highway_code.csv", "regulations.csv");
    }

    @Override
    protected double compute(Row row) {
        double number = row.number("speed");
        Speed speed = row.text("speed_unit").equals("mph") ? Speed.mph(number) : Speed.kmh(number);
        String rule = row.text("rule");
        String quantity = row.text("quantity");
        if (rule.startsWith("aashto")) {
            AashtoSightDistance aashto =
                    rule.equals("aashto-us") ? AashtoSightDistance.US_CUSTOMARY : AashtoSightDistance.METRIC;
            return inUnit(
                    row, quantity.equals("design") ? aashto.designDistance(speed) : part(quantity, aashto.at(speed)));
        }
        QuadraticRule quadratic = QuadraticRule.named(rule);
        return switch (quantity) {
            case "implied deceleration" -> quadratic.impliedDeceleration().inMps2();
            case "implied lag" -> quadratic.impliedLag().inSeconds();
            case "total exact" -> inUnit(row, quadratic.at(speed).total());
            default -> inUnit(row, part(quantity, quadratic.asPublished(speed)));
        };
    }

    private static Distance part(String quantity, StoppingRule.Parts parts) {
        return switch (quantity) {
            case "lag" -> parts.lag();
            case "braking" -> parts.braking();
            case "total" -> parts.total();
            default -> throw new IllegalArgumentException(quantity);
        };
    }

    private static double inUnit(Row row, Distance distance) {
        return row.text("unit").equals("ft") ? distance.inFeet() : distance.inMetres();
    }
}
