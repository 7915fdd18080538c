package io.github.stoplag.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.braking.StopOutcome;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.worked.Expression;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StoplagModuleTest {
    private static final int EACH = 8;

    /** What is a law, a curve, a table or a collector, and no result: who keeps one writes down what it is made of. */
    private static final Set<String> LAWS = Set.of(
            "Atmosphere",
            "ConditionalTally",
            "Detector",
            "FilamentLamp",
            "FilamentOnset",
            "GreySeries",
            "LatencyTable",
            "Moments",
            "NamedUnit",
            "OnsetCurve",
            "Pair",
            "Plan",
            "ReactionDistribution",
            "RoadLoad",
            "ShockleyDiode",
            "StoppingRule",
            "T",
            "Trajectory",
            "double[]");

    private final ObjectMapper mapper = new ObjectMapper().findAndRegisterModules();

    private static List<Class<?>> publicTypes() throws IOException, URISyntaxException, ClassNotFoundException {
        URI place =
                Speed.class.getProtectionDomain().getCodeSource().getLocation().toURI();
        if (!place.getPath().endsWith(".jar")) {
            return publicTypes(Path.of(place));
        }
        try (FileSystem jar = FileSystems.newFileSystem(Path.of(place))) {
            return publicTypes(jar.getPath("/"));
        }
    }

    private static List<Class<?>> publicTypes(Path root) throws IOException, ClassNotFoundException {
        List<Class<?>> types = new ArrayList<>();
        try (Stream<Path> files = Files.walk(root)) {
            List<String> names = files.map(file -> root.relativize(file).toString())
                    .filter(name -> name.endsWith(".class") && name.startsWith("io"))
                    .map(name -> name.replaceAll("\\.class$", "").replaceAll("[/\\\\]", "."))
                    .toList();
            for (String name : names) {
                Class<?> type = Class.forName(name, false, Speed.class.getClassLoader());
                if (Shapes.covers(type) && !type.isAnonymousClass()) {
                    types.add(type);
                }
            }
        }
        types.sort(Comparator.comparing(Class::getName));
        return types;
    }

    @Test
    void givesEveryValueAndResultBackToTheLastBit()
            throws ReflectiveOperationException, IOException, URISyntaxException {
        Samples samples = new Samples(13);
        List<String> wrong = new ArrayList<>();
        int types = 0;
        for (Class<?> type : publicTypes()) {
            if (!Samples.hasForm(type)) {
                continue;
            }
            types++;
            for (int i = 0; i < EACH; i++) {
                Object value = samples.of(type);
                String json = mapper.writeValueAsString(value);
                Object read = mapper.readValue(json, type);
                if (!read.equals(value) || !mapper.writeValueAsString(read).equals(json)) {
                    wrong.add(type.getName() + ": " + json);
                    break;
                }
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(types).isGreaterThan(150);
    }

    @Test
    void saysWhatHasNoForm() throws ReflectiveOperationException, IOException, URISyntaxException {
        List<String> unknown = new ArrayList<>();
        Set<String> met = new TreeSet<>();
        for (Class<?> type : publicTypes()) {
            try {
                Shapes.of(type).check();
            } catch (NoForm e) {
                String what = String.valueOf(e.getMessage()).replaceAll(".*?(\\S+) has no form in JSON$", "$1");
                met.add(what);
                if (!LAWS.contains(what)) {
                    unknown.add(type.getName() + " " + e.getMessage());
                }
            }
        }
        assertThat(unknown).as("give it a form, or name it among the laws").isEmpty();
        assertThat(met).contains("OnsetCurve", "Trajectory");
    }

    @Test
    void namesTheUnitOfEveryNumber() throws IOException {
        assertThat(mapper.writeValueAsString(Speed.kmh(90))).isEqualTo("{\"speed_mps\":25.0}");
        assertThat(mapper.writeValueAsString(FrictionCoefficient.of(0.7))).contains("friction_coefficient_ratio");
        PairOutcome contact =
                PairOutcome.Contact.of(TimeSpan.seconds(4), Speed.mps(5), Speed.mps(0), Speed.mps(5), true);
        assertThat(mapper.writeValueAsString(contact))
                .isEqualTo("{\"kind\":\"contact\",\"at_s\":4.0,\"closing_speed_mps\":5.0,\"leader_speed_mps\":0.0,"
                        + "\"follower_speed_mps\":5.0,\"leader_standing\":true}");
        JsonNode seen = mapper.valueToTree(new Detection.Seen(TimeSpan.millis(120), "an eye", Evidence.none()));
        assertThat(seen.get("kind").asText()).isEqualTo("seen");
        assertThat(seen.get("at_s").asDouble()).isEqualTo(0.12);
    }

    @Test
    void readsAFamilyByItsKindWhereverItStands() throws IOException {
        PairOutcome outcome = mapper.readValue(
                "{\"at_s\":3,\"grazing\":false,\"smallest_gap_m\":1.5,\"kind\":\"no-contact\"}", PairOutcome.class);
        assertThat(outcome).isEqualTo(PairOutcome.NoContact.of(Distance.metres(1.5), TimeSpan.seconds(3), false));
        StopOutcome stop = Stop.of(
                Speed.mph(60),
                TimeSpan.seconds(1.5),
                io.github.stoplag.braking.BrakeResponse.INSTANT,
                Deceleration.mps2(7));
        StopOutcome read = mapper.readValue(mapper.writeValueAsString(stop), StopOutcome.class);
        assertThat(read).isEqualTo(stop).hasSameHashCodeAs(stop);
        assertThat(read.evidence()).isEqualTo(stop.evidence());
        assertThat(mapper.treeToValue(mapper.valueToTree(stop), StopOutcome.class))
                .isEqualTo(stop);
    }

    /** A class of a user's own. */
    record Limit(String road, Speed limit, List<Speed> others, Optional<String> none) {
        Limit {
            none = Optional.empty();
        }
    }

    static class Holder {
        public Speed speed = Speed.mps(1);
    }

    @Test
    void worksInsideClassesOfOthers() throws IOException {
        assertThat(mapper.writeValueAsString(new Holder())).isEqualTo("{\"speed\":{\"speed_mps\":1.0}}");
        assertThat(mapper.readValue("{\"speed\":{\"speed_mps\":2}}", Holder.class).speed)
                .isEqualTo(Speed.mps(2));
        assertThatThrownBy(() -> mapper.readValue("{\"speed\":null}", Holder.class))
                .hasMessageContaining("speed must not be null");
        assertThatThrownBy(() -> mapper.readValue("{\"speed\":{}}", Holder.class))
                .hasMessageContaining("speed: missing field \"speed_mps\"");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {}                                    | speed: missing field "speed_mps"
            {"speed_kmh":50}                      | speed: unknown field "speed_kmh", its fields are speed_mps
            {"speed_mps":1,"speed_mps":2}         | speed: field "speed_mps" is given twice
            {"speed_mps":1,"unit":"m/s"}          | speed: unknown field "unit", its fields are speed_mps
            {"speed_mps":null}                    | speed.speed_mps must not be null
            {"speed_mps":"13.9"}                  | speed.speed_mps must be a number, got 13.9
            {"speed_mps":true}                    | speed.speed_mps must be a number, got true
            {"speed_mps":[1]}                     | speed.speed_mps must be a number, got START_ARRAY
            {"speed_mps":1e999}                   | speed.speed_mps must be a number within the range of a double, got 1e999
            {"speed_mps":-1}                      | speed.speed_mps: speed must be in [0, 150] m/s, got -1 m/s
            {"speed_mps":"NaN"}                   | speed.speed_mps: speed must be in [0, 150] m/s, got NaN m/s
            13.9                                  | speed must be an object, got 13.9
            "50 km/h"                             | speed must be an object, got 50 km/h
            null                                  | speed must not be null
            """)
    void refusesWhatIsNotASpeed(String json, String message) {
        assertRefused(json, Speed.class, message);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {}                           | pair_outcome: missing field "kind", one of contact, no-contact
            {"kind":"Contact"}           | pair_outcome.kind must be one of contact, no-contact, got Contact
            {"kind":null}                | pair_outcome.kind must be one of contact, no-contact, got null
            {"kind":"no-contact"}        | pair_outcome: missing field "smallest_gap_m"
            {"kind":"no-contact","at_s":1,"smallest_gap_m":1,"grazing":1} | pair_outcome.grazing must be true or false, got 1
            {"kind":"no-contact","at_s":1,"smallest_gap_m":1,"grazing":false,"kind":"no-contact"} | pair_outcome: field "kind" is given twice
            """)
    void refusesWhatIsNoOutcome(String json, String message) {
        assertRefused(json, PairOutcome.class, message);
    }

    private void assertRefused(String json, Class<?> type, String message) {
        assertThatThrownBy(() -> mapper.readValue(json, type))
                .isInstanceOfSatisfying(
                        JsonProcessingException.class,
                        e -> assertThat(e.getOriginalMessage()).isEqualTo(message));
    }

    @Test
    void readsNumbersTheSameInEveryLocale() throws IOException {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(mapper.readValue("{\"speed_mps\":1.5}", Speed.class)).isEqualTo(Speed.mps(1.5));
            assertThat(mapper.writeValueAsString(Speed.mps(1.5))).isEqualTo("{\"speed_mps\":1.5}");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void refusesToWriteHalfOfWhatHasNoForm() {
        assertThatThrownBy(() -> mapper.writeValueAsString(io.github.stoplag.sight.LampSignal.of(
                        io.github.stoplag.lamp.LedLamp.of(TimeSpan.millis(2), TimeSpan.millis(1)),
                        io.github.stoplag.quantity.LuminousIntensity.candela(60))))
                .hasMessageContaining("LampSignal.onset: OnsetCurve has no form in JSON");
    }

    @Test
    void wordsOfAnExpressionAreItsKinds() throws IOException {
        Expression half = mapper.readValue(
                "{\"kind\":\"quotient\",\"top\":{\"kind\":\"symbol\",\"letter\":\"v\",\"index\":\"\"},"
                        + "\"bottom\":{\"kind\":\"symbol\",\"letter\":\"a\",\"index\":\"\"}}",
                Expression.class);
        assertThat(half).isInstanceOf(Expression.Quotient.class);
    }

    /** Time has its counterpart in the JDK, to a nanosecond. */
    @Test
    void goesToAndFromDuration() {
        assertThat(TimeSpan.of(Duration.ofMillis(1500)).inSeconds()).isEqualTo(1.5);
        assertThat(TimeSpan.seconds(0.1).toDuration()).isEqualTo(Duration.ofMillis(100));
        assertThat(TimeSpan.of(TimeSpan.seconds(12.345678912).toDuration())).isEqualTo(TimeSpan.seconds(12.345678912));
    }
}
