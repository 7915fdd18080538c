package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.lang.reflect.Method;

/** The shape of a value type: its number in the SI unit that the name of its field ends with. */
final class ValueShape implements Shape {
    private final Maker maker;
    private final Method getter;

    private ValueShape(Class<?> type) {
        maker = Maker.canonical(type);
        getter = type.getRecordComponents()[0].getAccessor();
    }

    /** Says whether a type is one number with a unit: a record whose one component is {@code inMps} or the like. */
    static boolean covers(Class<?> type) {
        if (!type.isRecord() || type.getRecordComponents().length != 1) {
            return false;
        }
        var only = type.getRecordComponents()[0];
        return only.getType() == double.class && only.getName().matches("in[A-Z].*");
    }

    static ValueShape of(Class<?> type) {
        return new ValueShape(type);
    }

    @Override
    public String suffix() {
        return Words.unit(getter.getName());
    }

    @Override
    public void write(Object value, JsonGenerator out) throws IOException {
        Shapes.REAL.write(Maker.get(getter, value), out);
    }

    @Override
    public Object read(JsonParser in, String place) throws IOException {
        return maker.make(new Object[] {Shapes.REAL.read(in, place)}, place);
    }
}
