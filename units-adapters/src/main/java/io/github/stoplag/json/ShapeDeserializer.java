package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.jsontype.TypeDeserializer;
import java.io.IOException;

/** Reads a value or a result by its shape. */
final class ShapeDeserializer extends StdDeserializer<Object> {
    private static final long serialVersionUID = 1;

    private final transient Shape shape;

    ShapeDeserializer(Class<?> type) {
        super(type);
        shape = Shapes.alone(type);
        shape.check();
    }

    @Override
    public Object deserialize(JsonParser in, DeserializationContext context) throws IOException {
        try {
            return shape.read(in, Words.snake(handledType()));
        } catch (Refusal e) {
            MismatchedInputException refused = MismatchedInputException.from(in, handledType(), e.getMessage());
            refused.initCause(e);
            throw refused;
        }
    }

    @Override
    public Object deserializeWithType(JsonParser in, DeserializationContext context, TypeDeserializer typeDeserializer)
            throws IOException {
        return deserialize(in, context);
    }

    @Override
    public Object getNullValue(DeserializationContext context) throws MismatchedInputException {
        throw MismatchedInputException.from(
                context.getParser(), handledType(), Words.snake(handledType()) + " must not be null");
    }

    /** A field of a class of the user's own that is not there. */
    @Override
    public Object getAbsentValue(DeserializationContext context) throws MismatchedInputException {
        throw MismatchedInputException.from(
                context.getParser(), handledType(), Words.snake(handledType()) + " is missing");
    }
}
