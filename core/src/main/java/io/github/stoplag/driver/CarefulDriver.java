package io.github.stoplag.driver;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.Map;
import java.util.Objects;

/**
 * A driver given by reaction, brake build-up and deceleration together, as UN R157 gives its careful and competent one.
 *
 * <p>reaction = risk evaluation + delay; jerk = deceleration / build-up
 *
 * <p>The braking rises linearly over the build-up to the deceleration. The regulation states it for a road of friction
 * 1.0; on less, the road limits the deceleration. It is a benchmark for automated lane keeping in a cut-in, not a
 * measured population.
 *
 * <pre>{@code
 * CarefulDriver driver = CarefulDriver.unR157();
 * Stop.of(Speed.kmh(60), driver.reaction(), driver.response(),
 *         driver.deceleration()).orElseThrow().stoppingDistance(); // 42.3509 m
 * }</pre>
 *
 * @param riskEvaluation the time to evaluate the risk, [0, 30] s
 * @param delay the time from perception to the start of deceleration, [0, 30] s; with the risk evaluation at most 30 s
 * @param buildUp the time from the start of deceleration to all of it, (0, 10] s
 * @param deceleration the full deceleration
 * @param source where the figures come from
 */
public record CarefulDriver(
        TimeSpan riskEvaluation, TimeSpan delay, TimeSpan buildUp, Deceleration deceleration, Source source) {
    private static final String RESOURCE = "careful_driver.csv";
    private static final Range SOME_BUILD_UP = Ranges.BUILD_UP.withoutLowerEnd();
    private static final Table TABLE = Table.read(CarefulDriver.class, RESOURCE);

    /**
     * Checks the ranges.
     *
     * @param riskEvaluation the time to evaluate the risk, [0, 30] s
     * @param delay the time from perception to the start of deceleration, [0, 30] s
     * @param buildUp the time from the start of deceleration to all of it, (0, 10] s
     * @param deceleration the full deceleration
     * @param source where the figures come from
     * @throws IllegalArgumentException if a time is out of range or the deceleration is 0
     */
    public CarefulDriver {
        Objects.requireNonNull(buildUp, "buildUp");
        Objects.requireNonNull(delay, "delay");
        Objects.requireNonNull(riskEvaluation, "riskEvaluation");
        Objects.requireNonNull(source, "source");
        Ranges.REACTION.check("risk evaluation time", riskEvaluation.inSeconds());
        Ranges.REACTION.check("delay before deceleration", delay.inSeconds());
        Ranges.REACTION.check("risk evaluation and delay together", riskEvaluation.inSeconds() + delay.inSeconds());
        SOME_BUILD_UP.check(buildUp.inSeconds());
        Ranges.BRAKING.check("full deceleration", deceleration.inMps2());
    }

    /**
     * Gives the careful and competent driver of UN Regulation No. 157, annex 4, appendix 3: 0.4 s, 0.75 s, 0.6 s, 0.774
     * g.
     *
     * @return the driver
     */
    public static CarefulDriver unR157() {
        return new CarefulDriver(
                TimeSpan.seconds(value("risk evaluation")),
                TimeSpan.seconds(value("delay")),
                TimeSpan.seconds(value("build-up")),
                Deceleration.standardGravities(value("deceleration")),
                TABLE.source(row("deceleration")));
    }

    /**
     * Gives how far a vehicle of UN R157 wanders sideways before its cut-in is perceived; the risk evaluation starts
     * then.
     *
     * @return 0.375 m
     */
    public static Distance unR157LateralWander() {
        return Distance.metres(value("lateral wander"));
    }

    private static double value(String quantity) {
        return TABLE.number(row(quantity), "value");
    }

    private static Map<String, String> row(String quantity) {
        return TABLE.rows().stream()
                .filter(row -> TABLE.text(row, "quantity").equals(quantity))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no row " + quantity + " in " + RESOURCE));
    }

    /**
     * Gives the time from the signal to the start of deceleration.
     *
     * @return risk evaluation plus delay
     */
    public TimeSpan reaction() {
        return TimeSpan.seconds(riskEvaluation.inSeconds() + delay.inSeconds());
    }

    /**
     * Gives the brake response that belongs to this driver; the delay already holds any dead time.
     *
     * @return no dead time, then the build-up
     */
    public BrakeResponse response() {
        return new BrakeResponse(TimeSpan.seconds(0), buildUp);
    }

    /**
     * Gives the jerk during the build-up.
     *
     * @return deceleration over build-up in m/s³
     */
    public double jerkMps3() {
        return deceleration.inMps2() / buildUp.inSeconds();
    }
}
