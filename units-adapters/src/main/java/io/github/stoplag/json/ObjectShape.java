package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The shape of an object: a field for each part, all of them there, nothing else. */
final class ObjectShape implements Shape {
    static final String KIND = "kind";

    private final Class<?> type;
    private final Optional<String> kind;
    private final Supplier<List<Part>> found;
    private final Maker maker;
    private volatile @Nullable List<Part> parts;

    /**
     * A shape.
     *
     * @param kind the word among the kinds of a family, if it belongs to one
     * @param parts the parts, asked for when they are needed: a part may be of the same type
     */
    ObjectShape(Class<?> type, Optional<String> kind, Supplier<List<Part>> parts, Maker maker) {
        this.type = type;
        this.kind = kind;
        this.found = parts;
        this.maker = maker;
    }

    Optional<String> kind() {
        return kind;
    }

    private List<Part> parts() {
        List<Part> known = parts;
        if (known == null) {
            known = found.get();
            parts = known;
        }
        return known;
    }

    @Override
    public void check(Set<Class<?>> seen) {
        if (seen.add(type)) {
            parts().forEach(part -> part.shape().check(seen));
        }
    }

    @Override
    public void write(Object value, JsonGenerator out) throws IOException {
        out.writeStartObject();
        if (kind.isPresent()) {
            out.writeStringField(KIND, kind.get());
        }
        for (Part part : parts()) {
            out.writeFieldName(part.name());
            Object held = part.getter().apply(value);
            if (held == null) {
                out.writeNull();
            } else {
                part.shape().write(held, out);
            }
        }
        out.writeEndObject();
    }

    @Override
    public Object read(JsonParser in, String place) throws IOException {
        Shape.expect(in.currentToken() == JsonToken.START_OBJECT, in, place, "an object");
        List<Part> wanted = parts();
        @Nullable Object[] read = new Object[wanted.size()];
        boolean[] given = new boolean[wanted.size()];
        boolean kindGiven = false;
        while (in.nextToken() == JsonToken.FIELD_NAME) {
            String name = in.currentName();
            in.nextToken();
            if (kind.isPresent() && name.equals(KIND)) {
                once(kindGiven, place, name);
                Shape.expect(in.getText().equals(kind.get()), in, place + "." + KIND, kind.get());
                kindGiven = true;
                continue;
            }
            int i = indexOf(wanted, name, place);
            once(given[i], place, name);
            given[i] = true;
            read[i] = wanted.get(i).shape().readOrNull(in, place + "." + name);
        }
        if (kind.isPresent() && !kindGiven) {
            throw new Refusal(place + ": missing field \"" + KIND + "\"");
        }
        for (int i = 0; i < given.length; i++) {
            if (!given[i]) {
                throw new Refusal(place + ": missing field \"" + wanted.get(i).name() + "\"");
            }
        }
        return maker.make(read, place);
    }

    private static void once(boolean givenBefore, String place, String name) {
        if (givenBefore) {
            throw new Refusal(place + ": field \"" + name + "\" is given twice");
        }
    }

    private int indexOf(List<Part> wanted, String name, String place) {
        for (int i = 0; i < wanted.size(); i++) {
            if (wanted.get(i).name().equals(name)) {
                return i;
            }
        }
        String known = Stream.concat(
                        kind.map(word -> KIND).stream(), wanted.stream().map(Part::name))
                .collect(Collectors.joining(", "));
        throw new Refusal(
                place + ": unknown field \"" + name + "\", its fields are " + (known.isEmpty() ? "none" : known));
    }
}
