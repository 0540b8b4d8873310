package org.lifeline.examples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;

/** Design files and results among the test resources. */
public final class TestFiles {
    /** Designs whose results were computed by an independent program; see {@code independent/README.txt}. */
    public static final List<String> INDEPENDENT = List.of(
            "silo-roof-gripped-middle",
            "crane-girder-traveller",
            "loading-bay-three-spans-free",
            "conveyor-gallery",
            "pipe-bridge-friction",
            "hangar-truss-clamped",
            "cold-store-yielding-ends",
            "stadium-catwalk-inline-absorber",
            "tank-farm-traveller-friction",
            "sloping-roof-edge-corner",
            "plain-lanyard-slack-span",
            "heavy-worker-bottoms-out",
            "two-fall-together",
            "one-hangs-second-falls",
            "gently-sloping-traveller",
            "elastic-posts-corner",
            "soft-line-two-absorbers",
            "steep-spans-traveller-rests");

    private TestFiles() {}

    /** The bytes of a resource below {@code org/lifeline/examples}. */
    public static byte[] bytes(String name) {
        try (InputStream in = TestFiles.class.getResourceAsStream("/org/lifeline/examples/" + name)) {
            if (in == null) {
                throw new IllegalArgumentException("no resource " + name);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static String text(String name) {
        return new String(bytes(name), StandardCharsets.UTF_8);
    }

    public static JsonNode tree(String name) {
        return tree(bytes(name));
    }

    public static JsonNode tree(byte[] bytes) {
        try {
            return new ObjectMapper().readTree(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static DesignFile design(String name) {
        return read(bytes(name));
    }

    public static DesignFile read(byte[] bytes) {
        return new DesignReader().read(bytes);
    }

    public static DesignFile read(String text) {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    /** The conveyor gallery design with one piece of its text replaced. */
    public static String gallery(String what, String by) {
        String text = text("independent/conveyor-gallery.design.json");
        if (!text.contains(what)) {
            throw new IllegalArgumentException("the design does not contain " + what);
        }
        return text.replace(what, by);
    }
}
