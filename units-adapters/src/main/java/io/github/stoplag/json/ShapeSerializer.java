package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.jsontype.TypeSerializer;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;

/** Writes a value or a result by its shape. */
final class ShapeSerializer extends StdSerializer<Object> {
    private static final long serialVersionUID = 1;

    private final transient Shape shape;

    ShapeSerializer(Class<?> type) {
        super(type, false);
        shape = Shapes.alone(type);
        shape.check();
    }

    @Override
    public void serialize(Object value, JsonGenerator out, SerializerProvider provider) throws IOException {
        shape.write(value, out);
    }

    /** The kinds are told apart by their own word. */
    @Override
    public void serializeWithType(
            Object value, JsonGenerator out, SerializerProvider provider, TypeSerializer typeSerializer)
            throws IOException {
        shape.write(value, out);
    }
}
