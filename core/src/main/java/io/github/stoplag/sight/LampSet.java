package io.github.stoplag.sight;

import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Several lamps that signal together: the pair of stop lamps, a centre high lamp, an LED lamp beside a filament lamp.
 *
 * <p>Lamps closer together than the eye resolves at the viewing distance merge: c(t) = Σ Iₖ (rₖ(t − dₖ) − rₖ(0−)).
 * Lamps further apart are seen each on its own, and the signal with the first of them. Chains of neighbours within the
 * resolution are one light.
 *
 * <p>Symbols: c change of light in cd; Iₖ, rₖ of each lamp as in {@link LampSignal}; dₖ by how much its circuit closes
 * later, [0, 10] s. At usual distances nothing merges but the parts of one lamp: 1 minute of arc is 9 mm at 30 m. That
 * the first lamp counts takes an observer to whom every lamp is as near; {@link Outcome} holds beside it the sum, as if
 * all merged, and the mean over the lamps, as if each driver looked at one. Not modelled: that lamps apart help each
 * other a little, that a lit neighbour masks one, and that a driver may take one lamp for another signal.
 *
 * <pre>{@code
 * LampSignal bulb = LampSignal.of(LaboratoryLamps.standard(), LuminousIntensity.candela(60));
 * LampSignal led = LampSignal.of(LaboratoryLamps.led(), LuminousIntensity.candela(40));
 * LampSet mixed = LampSet.of(
 *         LampSet.Member.of("left", bulb).at(-0.6, 0.8),
 *         LampSet.Member.of("right", bulb).at(0.6, 0.8),
 *         LampSet.Member.of("centre", led).at(0, 1.1).after(TimeSpan.millis(5)));
 * Detector eye = IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3));
 * LampSet.Outcome seen = mixed.detect(eye, Distance.metres(30));
 * seen.lights().size(); // 3
 * seen.first().name(); // centre
 * }</pre>
 */
public final class LampSet implements Evident {
    private final List<Member> members;

    /**
     * One lamp of a set.
     *
     * @param name what it is called in results
     * @param signal its light: rise, intensity, and what burns in it before
     * @param delay by how much its circuit closes later than the first, [0, 10] s
     * @param lateralM its place across the vehicle, [-3, 3] m
     * @param heightM its height above the road, [0, 5] m
     */
    public record Member(String name, LampSignal signal, TimeSpan delay, double lateralM, double heightM) {
        /**
         * Checks the ranges.
         *
         * @param name what it is called in results
         * @param signal its light
         * @param delay by how much its circuit closes later than the first, [0, 10] s
         * @param lateralM its place across the vehicle, [-3, 3] m
         * @param heightM its height above the road, [0, 5] m
         * @throws IllegalArgumentException if one is out of range or the name is blank
         */
        public Member {
            Objects.requireNonNull(delay, "delay");
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(signal, "signal");
            if (name.isBlank()) {
                throw new IllegalArgumentException("a lamp of a set must have a name, got an empty text");
            }
            Check.inRange("delay of " + name, delay.inSeconds(), 0, 10, "s");
            Check.inRange("lateral place of " + name, lateralM, -3, 3, "m");
            Check.inRange("height of " + name, heightM, 0, 5, "m");
        }

        /**
         * Takes a lamp in the middle, 1 m high, without delay.
         *
         * @param name what it is called in results
         * @param signal its light
         * @return the lamp
         */
        public static Member of(String name, LampSignal signal) {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(signal, "signal");
            return new Member(name, signal, TimeSpan.seconds(0), 0, 1);
        }

        /**
         * Takes a lamp that burns before and after and is not switched, such as a tail lamp of its own.
         *
         * @param name what it is called in results
         * @param intensity its steady intensity
         * @return the lamp
         */
        public static Member burning(String name, LuminousIntensity intensity) {
            Objects.requireNonNull(name, "name");
            OnsetCurve none = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));
            return of(name, new LampSignal(none, LuminousIntensity.candela(0), intensity));
        }

        /**
         * Puts the lamp elsewhere.
         *
         * @param rightM its place across the vehicle, [-3, 3] m
         * @param upM its height above the road, [0, 5] m
         * @return the changed lamp
         * @throws IllegalArgumentException if one is out of range
         */
        public Member at(double rightM, double upM) {
            return new Member(name, signal, delay, rightM, upM);
        }

        /**
         * Closes its circuit later.
         *
         * @param later by how much, [0, 10] s
         * @return the changed lamp
         * @throws IllegalArgumentException if it is out of range
         */
        public Member after(TimeSpan later) {
            Objects.requireNonNull(later, "later");
            return new Member(name, signal, later, lateralM, heightM);
        }

        boolean switched() {
            return signal.finalIntensity().inCandela() > 0;
        }

        private double apartM(Member other) {
            return Math.hypot(lateralM - other.lateralM, heightM - other.heightM);
        }
    }

    private LampSet(List<Member> members) {
        this.members = members;
        if (members.isEmpty()) {
            throw new IllegalArgumentException("a set must have at least one lamp, got none");
        }
    }

    /**
     * Makes a set.
     *
     * @param members its lamps
     * @return the set
     * @throws IllegalArgumentException if there is none
     */
    public static LampSet of(Member... members) {
        Objects.requireNonNull(members, "members");
        return new LampSet(List.of(members));
    }

    /**
     * Makes a set.
     *
     * @param members its lamps
     * @return the set
     * @throws IllegalArgumentException if there is none
     */
    public static LampSet of(List<Member> members) {
        Objects.requireNonNull(members, "members");
        return new LampSet(List.copyOf(members));
    }

    /** {@return the lamps} */
    public List<Member> members() {
        return members;
    }

    /**
     * Puts out what burned before: the set by day.
     *
     * @return the set without steady light
     */
    public LampSet withTailsDark() {
        return new LampSet(members.stream()
                .map(m -> new Member(
                        m.name,
                        LampSignal.of(m.signal.onset(), m.signal.finalIntensity()),
                        m.delay,
                        m.lateralM,
                        m.heightM))
                .toList());
    }

    /**
     * Gives all lamps as one light, as they are where they merge.
     *
     * @return the signal of the sum
     * @throws IllegalArgumentException if the intensities exceed 1e7 cd together
     */
    public LampSignal merged() {
        return merged(members);
    }

    private static LampSignal merged(List<Member> lamps) {
        if (lamps.size() == 1 && lamps.get(0).delay().inSeconds() == 0) {
            return lamps.get(0).signal();
        }
        double finalCd = 0;
        double steadyCd = 0;
        for (Member lamp : lamps) {
            finalCd += lamp.signal().finalIntensity().inCandela();
            steadyCd += lamp.signal().steadyIntensity().inCandela();
        }
        return new LampSignal(
                new JointOnset(lamps), LuminousIntensity.candela(finalCd), LuminousIntensity.candela(steadyCd));
    }

    /**
     * One light as the eye resolves it.
     *
     * @param name the lamps in it
     * @param lamps how many they are
     * @param detection when it is seen
     */
    public record Light(String name, int lamps, Detection detection) {

        /**
         * Refuses nulls.
         *
         * @param name the lamps in it
         * @param lamps how many they are
         * @param detection when it is seen
         * @throws NullPointerException if one that is required is null
         */
        public Light {
            Objects.requireNonNull(detection, "detection");
            Objects.requireNonNull(name, "name");
        }
    }

    /**
     * Finds when the signal is seen by a healthy eye.
     *
     * @param detector the criterion, the same for every light
     * @param distance how far the eye is
     * @return the moment with its lights and bounds
     * @throws IllegalArgumentException as {@link Detector#detect}
     */
    public Outcome detect(Detector detector, Distance distance) {
        return detect(detector, distance, EyeResolution.NORMAL);
    }

    /**
     * Finds when the signal is seen.
     *
     * @param detector the criterion, the same for every light
     * @param distance how far the eye is, (0, 1e5] m
     * @param resolution how close lamps merge
     * @return the moment with its lights and bounds
     * @throws IllegalArgumentException if the distance is out of range, or as {@link Detector#detect}
     */
    public Outcome detect(Detector detector, Distance distance, EyeResolution resolution) {
        Objects.requireNonNull(detector, "detector");
        Atmosphere.checkDistanceM(distance);
        List<Light> lights = new ArrayList<>();
        for (List<Member> group : groups(distance, resolution)) {
            if (group.stream().anyMatch(Member::switched)) {
                lights.add(light(detector, group));
            }
        }
        if (lights.isEmpty()) {
            lights.add(light(detector, members));
        }
        List<Light> each = members.stream()
                .filter(Member::switched)
                .map(m -> light(detector, List.of(m)))
                .toList();
        return new Outcome(
                List.copyOf(lights),
                light(detector, members).detection(),
                each.isEmpty() ? List.copyOf(lights) : each,
                evidence().with(resolution.evidence()));
    }

    /**
     * Finds when the signal is seen under conditions, by the criterion they recommend; tail lamps burn only where they
     * say so.
     *
     * @param conditions background, distance, air, tail lamps
     * @return the moment with its lights and bounds
     * @throws IllegalArgumentException as {@link DetectorChooser#choose} and {@link Detector#detect}
     */
    public Outcome detect(ViewingConditions conditions) {
        LampSet set = conditions.tailLit() ? this : withTailsDark();
        return set.detect(DetectorChooser.choose(conditions), conditions.distance());
    }

    private static Light light(Detector detector, List<Member> lamps) {
        String name = String.join(" and ", lamps.stream().map(Member::name).toList());
        return new Light(name, lamps.size(), detector.detect(merged(lamps)));
    }

    private List<List<Member>> groups(Distance distance, EyeResolution resolution) {
        List<List<Member>> groups = new ArrayList<>();
        for (Member member : members) {
            List<Member> joined = new ArrayList<>(List.of(member));
            groups.removeIf(group -> group.stream().anyMatch(m -> resolution.merges(m.apartM(member), distance))
                    && joined.addAll(group));
            groups.add(joined);
        }
        return groups;
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("a set of " + members.size()
                        + " lamps: seen with the first light to pass the criterion; lamps the eye does not"
                        + " resolve add up")
                .withCaveat("lamps side by side: the first light counts as if the driver saw all of them equally; lamps"
                        + " that help or mask each other, or are taken for another signal, are not modelled");
    }

    /**
     * When a set is seen.
     *
     * @param lights its lights as the eye resolves them
     * @param together the sum of all lamps, as if they merged
     * @param each every switched lamp alone
     * @param evidence what the rule rests on
     */
    public record Outcome(List<Light> lights, Detection together, List<Light> each, Evidence evidence)
            implements Evident {
        /**
         * Copies the lists.
         *
         * @param lights its lights as the eye resolves them
         * @param together the sum of all lamps, as if they merged
         * @param each every switched lamp alone
         * @param evidence what the rule rests on
         */
        public Outcome {
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(together, "together");
            lights = Check.copyOf("lights", lights);
            each = Check.copyOf("each", each);
        }

        /** {@return the light that is seen first; of a set never seen, its first} */
        public Light first() {
            return earliest(lights);
        }

        /** {@return when the signal is seen, with the evidence of the rule} */
        public Detection detection() {
            return withEvidence(first().detection());
        }

        /** {@return the first lamp to be seen alone, as if no lamp helped another} */
        public Detection apart() {
            return withEvidence(earliest(each).detection());
        }

        /**
         * Gives the mean over the lamps, as if each driver looked at one of them, all equally often.
         *
         * @return the mean time, or that of a lamp that is never seen
         */
        public Detection lookedAtOne() {
            double sumS = 0;
            for (Light light : each) {
                if (light.detection().time().isEmpty()) {
                    return withEvidence(light.detection());
                }
                sumS += light.detection().orElseThrow().inSeconds();
            }
            Detection any = each.get(0).detection();
            return withEvidence(new Detection.Seen(
                    TimeSpan.seconds(sumS / each.size()), any.criterion() + "; mean over the lamps", any.evidence()));
        }

        private Detection withEvidence(Detection detection) {
            Evidence more = detection.evidence().with(evidence);
            return detection instanceof Detection.Seen seen
                    ? new Detection.Seen(seen.at(), seen.criterion(), more)
                    : new Detection.NeverSeen(detection.criterion(), ((Detection.NeverSeen) detection).reason(), more);
        }

        private static Light earliest(List<Light> lights) {
            Light first = lights.get(0);
            for (Light light : lights) {
                if (timeS(light) < timeS(first)) {
                    first = light;
                }
            }
            return first;
        }

        private static double timeS(Light light) {
            return light.detection().time().map(TimeSpan::inSeconds).orElse(Double.POSITIVE_INFINITY);
        }
    }

    /**
     * How much a mixed set keeps of what it would gain if all its lamps were like the one seen first, against all like
     * the one seen last.
     *
     * @param firstRatio the share if the first light counts
     * @param togetherRatio the share if the sum counts
     * @param lookedAtOneRatio the share if each driver looks at one lamp
     */
    public record Kept(double firstRatio, double togetherRatio, double lookedAtOneRatio) {}

    /**
     * Says how much of a full exchange's gain this set keeps.
     *
     * @param detector the criterion, the same for every light
     * @param distance how far the eye is
     * @return the shares; nothing if all lamps are seen at the same moment, or one never is
     * @throws IllegalArgumentException as {@link #detect}
     */
    public Optional<Kept> kept(Detector detector, Distance distance) {
        Objects.requireNonNull(detector, "detector");
        Outcome mixed = detect(detector, distance);
        List<Member> switched = members.stream().filter(Member::switched).toList();
        if (mixed.each().stream().anyMatch(light -> light.detection().time().isEmpty())) {
            return Optional.empty();
        }
        Comparator<Integer> bySeen = Comparator.comparing(
                i -> mixed.each().get(i).detection().orElseThrow().inSeconds());
        List<Integer> places = IntStream.range(0, switched.size()).boxed().toList();
        Outcome none =
                like(switched.get(places.stream().max(bySeen).orElseThrow())).detect(detector, distance);
        Outcome all =
                like(switched.get(places.stream().min(bySeen).orElseThrow())).detect(detector, distance);
        if (!(seenS(none.lookedAtOne()) > seenS(all.lookedAtOne()))) {
            return Optional.empty();
        }
        return Optional.of(new Kept(
                keptGainRatio(none.detection(), mixed.detection(), all.detection()),
                keptGainRatio(none.together(), mixed.together(), all.together()),
                keptGainRatio(none.lookedAtOne(), mixed.lookedAtOne(), all.lookedAtOne())));
    }

    /** The set with the light and the delay of one lamp in every place that is switched. */
    private LampSet like(Member one) {
        return new LampSet(members.stream()
                .map(m -> m.switched() ? new Member(m.name, one.signal, one.delay, m.lateralM, m.heightM) : m)
                .toList());
    }

    private static double seenS(Detection detection) {
        return detection.orElseThrow().inSeconds();
    }

    /**
     * Says how much of a full exchange's gain a mixed set keeps: (t_present − t_mixed)/(t_present − t_full).
     *
     * @param present when the present signal is seen
     * @param mixed when the mixed set is seen
     * @param full when the set with every lamp exchanged is seen
     * @return the share: 0 nothing, 1 all of it
     * @throws java.util.NoSuchElementException if one is never seen
     * @throws IllegalArgumentException if the full exchange gains nothing
     */
    public static double keptGainRatio(Detection present, Detection mixed, Detection full) {
        Objects.requireNonNull(full, "full");
        Objects.requireNonNull(mixed, "mixed");
        Objects.requireNonNull(present, "present");
        double presentS = present.orElseThrow().inSeconds();
        double gainS = presentS - full.orElseThrow().inSeconds();
        if (!(gainS > 0)) {
            throw new IllegalArgumentException(
                    "gain of the full exchange must be above 0 s to keep a share of it, got " + gainS + " s");
        }
        return (presentS - mixed.orElseThrow().inSeconds()) / gainS;
    }
}
