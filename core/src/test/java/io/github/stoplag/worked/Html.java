package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** Reads pages and quiz files as XML. */
final class Html {
    private Html() {}

    static Document read(String xml) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        } catch (Exception e) {
            throw new AssertionError("not well-formed: " + e.getMessage() + "\n" + xml, e);
        }
    }

    static void checkPage(String html) {
        Document page = read(html);
        assertThat(page.getElementsByTagName("script").getLength()).isZero();
        assertThat(html).doesNotContain("http:", "https:", "src=", "href=", "url(", "@import");
        assertThat(page.getElementsByTagName("h1").getLength()).isEqualTo(1);
    }
}
