package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.util.TokenBuffer;
import java.io.IOException;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The shape of a sealed family: an object whose {@code kind} says which member it is. */
final class FamilyShape implements Shape {
    private final Map<String, Class<?>> memberByKind = new TreeMap<>();

    FamilyShape(Class<?> family) {
        for (Class<?> member : family.getPermittedSubclasses()) {
            memberByKind.put(Words.kebab(member.getSimpleName()), member);
        }
    }

    @Override
    public void check(Set<Class<?>> seen) {
        // a member that has no form is refused when it comes
    }

    @Override
    public void write(Object value, JsonGenerator out) throws IOException {
        Shape shape = Shapes.of(value.getClass());
        shape.check();
        shape.write(value, out);
    }

    @Override
    public Object read(JsonParser in, String place) throws IOException {
        Shape.expect(in.currentToken() == JsonToken.START_OBJECT, in, place, "an object");
        try (TokenBuffer whole = new TokenBuffer(in)) {
            whole.copyCurrentStructure(in);
            Class<?> member = member(whole, place);
            try (JsonParser again = whole.asParser(in)) {
                again.nextToken();
                Shape shape = Shapes.of(member);
                shape.check();
                return shape.read(again, place);
            }
        }
    }

    private Class<?> member(TokenBuffer whole, String place) throws IOException {
        try (JsonParser in = whole.asParser()) {
            in.nextToken();
            while (in.nextToken() == JsonToken.FIELD_NAME) {
                boolean kind = in.currentName().equals(ObjectShape.KIND);
                JsonToken token = in.nextToken();
                if (kind) {
                    Class<?> member = token == JsonToken.VALUE_STRING ? memberByKind.get(in.getText()) : null;
                    if (member == null) {
                        throw new Refusal(place + "." + ObjectShape.KIND + " must be one of "
                                + String.join(", ", memberByKind.keySet()) + ", got " + in.getText());
                    }
                    return member;
                }
                in.skipChildren();
            }
        }
        throw new Refusal(place + ": missing field \"" + ObjectShape.KIND + "\", one of "
                + String.join(", ", memberByKind.keySet()));
    }
}
