package io.github.stoplag.quantity;

import io.github.stoplag.PublishedTableTest;
import java.util.List;

/** Conversions against the exact definitions of the units. */
class UnitsPublishedTest extends PublishedTableTest {
    @Override
    protected List<String> tables() {
        return List.of("units.csv");
    }

    @Override
    protected double compute(Row row) {
        return switch (row.text("quantity")) {
            case "metres per foot" -> Distance.feet(1).inMetres();
            case "metres per inch" -> Distance.inches(1).inMetres();
            case "metres per mile" -> Distance.miles(1).inMetres();
            case "m/s per mph" -> Speed.mph(1).inMps();
            case "ft/s per mph" -> Speed.mph(1).inFtps();
            case "m/s per km/h" -> Speed.kmh(1).inMps();
            case "11.2 ft/s2" -> Deceleration.ftps2(11.2).inMps2();
            case "14.8 ft/s2" -> Deceleration.ftps2(14.8).inMps2();
            case "standard gravity" -> Deceleration.standardGravities(1).inMps2();
            case "kg per lb" -> Mass.pounds(1).inKg();
            default -> throw new IllegalArgumentException(row.text("quantity"));
        };
    }
}
