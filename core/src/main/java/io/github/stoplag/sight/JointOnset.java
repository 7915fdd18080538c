package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The light of several lamps as one course: r(t) = Σ Iₖ rₖ(t − dₖ)/Σ Iₖ.
 *
 * <p>Where one lamp rises while another falls the sum may turn between their breakpoints; such turns are searched for
 * and named among its own, so that whoever integrates or looks for a crossing gets stretches that go one way.
 */
final class JointOnset implements OnsetCurve {
    private static final int SAMPLES = 240;
    private static final double NEAREST = 1e-7;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final double ROUNDING = 1e-13;
    private static final double LATER = 20;

    private final List<LampSet.Member> members;
    private final double sumCd;
    private final double settledS;
    private final double[] breakpointsS;

    JointOnset(List<LampSet.Member> members) {
        this.members = members;
        double cd = members.stream().mapToDouble(JointOnset::finalCd).sum();
        sumCd = cd > 0 ? cd : 1;
        settledS = members.stream()
                .mapToDouble(m -> m.delay().inSeconds() + m.signal().onset().settledS())
                .max()
                .orElseThrow();
        double[] knots = members.stream()
                .flatMapToDouble(JointOnset::knotsS)
                .filter(s -> s > 0)
                .sorted()
                .distinct()
                .toArray();
        List<Double> turns = new ArrayList<>();
        for (int i = 0; i <= knots.length; i++) {
            double fromS = i == 0 ? 0 : knots[i - 1];
            double toS = i < knots.length ? Math.nextDown(knots[i]) : fromS + LATER * Math.max(settledS, 1e-3);
            if (bothWays(fromS, toS)) {
                addTurns(turns, fromS, toS);
            }
        }
        breakpointsS = DoubleStream.concat(Arrays.stream(knots), turns.stream().mapToDouble(t -> t))
                .sorted()
                .distinct()
                .toArray();
    }

    private static double finalCd(LampSet.Member member) {
        return member.signal().finalIntensity().inCandela();
    }

    private static DoubleStream knotsS(LampSet.Member member) {
        double delayS = member.delay().inSeconds();
        return DoubleStream.concat(Arrays.stream(member.signal().onset().breakpointsS()), DoubleStream.of(0))
                .filter(s -> s >= 0)
                .map(s -> delayS + s);
    }

    private static double shareAt(LampSet.Member member, double timeS) {
        double sinceS = timeS - member.delay().inSeconds();
        // a lamp whose circuit closes later is until then as it was
        return member.signal().onset().relativeIntensity(sinceS < 0 ? -Double.MIN_VALUE : sinceS);
    }

    private boolean bothWays(double fromS, double toS) {
        boolean up = false;
        boolean down = false;
        for (LampSet.Member member : members) {
            double change = (shareAt(member, toS) - shareAt(member, fromS)) * finalCd(member) / sumCd;
            up |= change > ROUNDING;
            down |= change < -ROUNDING;
        }
        return up && down;
    }

    /** Samples evenly and towards the start, where a lamp may fall in microseconds, and narrows every turn down. */
    private void addTurns(List<Double> turns, double fromS, double toS) {
        double[] at = IntStream.rangeClosed(0, SAMPLES)
                .mapToDouble(i -> i / (double) SAMPLES)
                .flatMap(x -> DoubleStream.of(x, Math.pow(NEAREST, 1 - x)))
                .map(x -> fromS + x * (toS - fromS))
                .sorted()
                .distinct()
                .toArray();
        for (int i = 1; i + 1 < at.length; i++) {
            double before = relativeIntensity(at[i - 1]);
            double here = relativeIntensity(at[i]);
            double after = relativeIntensity(at[i + 1]);
            if ((here - before) * (after - here) < 0) {
                turns.add(turnS(at[i - 1], at[i + 1], here > before ? 1 : -1));
            }
        }
    }

    private double turnS(double fromS, double toS, int sign) {
        double loS = fromS;
        double hiS = toS;
        double leftS = hiS - GOLDEN * (hiS - loS);
        double rightS = loS + GOLDEN * (hiS - loS);
        while (leftS > loS && rightS > leftS && hiS > rightS && hiS - loS > 1e-12) {
            if (sign * relativeIntensity(leftS) > sign * relativeIntensity(rightS)) {
                hiS = rightS;
                rightS = leftS;
                leftS = hiS - GOLDEN * (hiS - loS);
            } else {
                loS = leftS;
                leftS = rightS;
                rightS = loS + GOLDEN * (hiS - loS);
            }
        }
        return (loS + hiS) / 2;
    }

    @Override
    public String label() {
        return String.join(" and ", members.stream().map(LampSet.Member::name).toList());
    }

    @Override
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-on", timeS);
        double cd = 0;
        for (LampSet.Member member : members) {
            cd += finalCd(member) * shareAt(member, timeS);
        }
        return cd / sumCd;
    }

    @Override
    public double settledS() {
        return settledS;
    }

    @Override
    public double[] breakpointsS() {
        return breakpointsS.clone();
    }

    @Override
    public Optional<String> staysDark() {
        List<Optional<String>> dark =
                members.stream().map(m -> m.signal().onset().staysDark()).toList();
        return dark.stream().allMatch(Optional::isPresent) ? dark.get(0) : Optional.empty();
    }

    @Override
    public Evidence evidence() {
        return Evidence.joined(
                        members.stream().map(m -> m.signal().onset().evidence()).toList())
                .with(Evidence.of("light of " + members.size() + " lamps added up, later by "
                        + String.join(
                                ", ",
                                members.stream().map(m -> m.delay().toString()).toList())));
    }

    @Override
    public String toString() {
        return label();
    }
}
