package io.github.stoplag.json;

import com.fasterxml.jackson.core.Version;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.Module;
import com.fasterxml.jackson.databind.SerializationConfig;
import com.fasterxml.jackson.databind.deser.Deserializers;
import com.fasterxml.jackson.databind.ser.Serializers;
import org.jspecify.annotations.Nullable;

/**
 * Teaches Jackson the value types and results of Stoplag.
 *
 * <p>A value is an object with one field that names the quantity and its SI unit, a result an object with a field for
 * each component, which carries the unit at its end; a result that is one of several kinds says which by {@code kind}:
 *
 * <pre>{@code
 * {"speed_mps":26.8224}
 * {"kind":"contact","at_s":4.2,"closing_speed_mps":5.9,
 *     "leader_speed_mps":0.0,"follower_speed_mps":5.9,"leader_standing":true}
 * }</pre>
 *
 * <p>What is read equals what was written, to the last bit. A field that is unknown, missing, given twice, null or of
 * another kind is refused by one line that names it, and so is a value out of its range; only what is optional may be
 * null, and it must be there too. Infinities and NaN, where a result may hold them, are the texts {@code "Infinity"},
 * {@code "-Infinity"} and {@code "NaN"}. What holds a law or a curve (a distribution, the light of a lamp) has no form:
 * write down what it is made of.
 *
 * <p>Example:
 *
 * <pre>{@code
 * ObjectMapper mapper = new ObjectMapper().registerModule(new StoplagModule());
 * String json = mapper.writeValueAsString(Speed.kmh(90)); // {"speed_mps":25.0}
 * mapper.readValue(json, Speed.class); // 25 m/s
 * }</pre>
 */
public final class StoplagModule extends Module {
    /** Makes the module; Jackson's {@code findAndRegisterModules} finds it too. */
    public StoplagModule() {
        // nothing is to be set
    }

    @Override
    public String getModuleName() {
        return "stoplag";
    }

    @Override
    public Version version() {
        return Version.unknownVersion();
    }

    @Override
    public void setupModule(SetupContext context) {
        context.addSerializers(new Serializers.Base() {
            @Override
            public @Nullable JsonSerializer<?> findSerializer(
                    SerializationConfig config, JavaType type, BeanDescription description) {
                return Shapes.covers(type.getRawClass()) ? new ShapeSerializer(type.getRawClass()) : null;
            }
        });
        context.addDeserializers(new Deserializers.Base() {
            @Override
            public @Nullable JsonDeserializer<?> findBeanDeserializer(
                    JavaType type, DeserializationConfig config, BeanDescription description) {
                return Shapes.covers(type.getRawClass()) ? new ShapeDeserializer(type.getRawClass()) : null;
            }

            @Override
            public @Nullable JsonDeserializer<?> findEnumDeserializer(
                    Class<?> type, DeserializationConfig config, BeanDescription description) {
                return Shapes.covers(type) ? new ShapeDeserializer(type) : null;
            }

            @Override
            public boolean hasDeserializerFor(DeserializationConfig config, Class<?> type) {
                return Shapes.covers(type);
            }
        });
    }
}
