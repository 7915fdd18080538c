package io.github.stoplag.examples.draw;

import java.io.StringWriter;
import java.util.function.Consumer;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes well-formed XML; SVG and the report, which is HTML that is also XML, go through it. */
public final class Markup {
    private final StringWriter buffer = new StringWriter();
    private final XMLStreamWriter xml;

    private Markup() throws XMLStreamException {
        xml = XMLOutputFactory.newInstance().createXMLStreamWriter(buffer);
    }

    /** Gives what a writer of elements wrote. */
    static String text(Consumer<Markup> content) {
        try {
            Markup markup = new Markup();
            content.accept(markup);
            markup.xml.flush();
            return markup.buffer.toString();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Opens an element; attributes come as name, value, name, value. */
    public Markup open(String name, String... attributes) {
        return write(() -> {
            xml.writeStartElement(name);
            for (int i = 0; i < attributes.length; i += 2) {
                xml.writeAttribute(attributes[i], attributes[i + 1]);
            }
        });
    }

    public Markup close() {
        return write(xml::writeEndElement);
    }

    public Markup text(String text) {
        return write(() -> xml.writeCharacters(text));
    }

    public Markup line() {
        return text("\n");
    }

    /** Writes an element that holds only text. */
    public Markup element(String name, String text, String... attributes) {
        return open(name, attributes).text(text).close();
    }

    /** Writes an element that holds nothing, in the short form that HTML allows for its void elements only. */
    public Markup empty(String name, String... attributes) {
        return write(() -> {
            xml.writeEmptyElement(name);
            for (int i = 0; i < attributes.length; i += 2) {
                xml.writeAttribute(attributes[i], attributes[i + 1]);
            }
        });
    }

    private Markup write(Step step) {
        try {
            step.run();
            return this;
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private interface Step {
        void run() throws XMLStreamException;
    }
}
