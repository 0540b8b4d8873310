package org.lifeline.report;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Parses what was written with the JDK's parser, which takes nothing that is not well-formed. */
public final class Xml {
    private Xml() {}

    public static Document parse(String text) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
        } catch (Exception e) {
            throw new AssertionError("not well-formed: " + e.getMessage(), e);
        }
    }

    public static List<Element> all(Document d, String tag) {
        NodeList list = d.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < list.getLength(); i++) {
            elements.add((Element) list.item(i));
        }
        return elements;
    }
}
