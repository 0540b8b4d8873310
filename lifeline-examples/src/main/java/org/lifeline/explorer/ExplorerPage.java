package org.lifeline.explorer;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.lifeline.analysis.warning.ModelLimits;
import org.lifeline.base.InertText;

/**
 * The page that computes a line in a browser: one file with the compiled library in it, that loads nothing and sends nothing.
 *
 * <p>Immutable and thread-safe.
 */
public final class ExplorerPage {
    /** Where the library lies as it was compiled for a browser. */
    public static final String ENGINE = "/org/lifeline/explorer/engine.js";

    private static final String PARTS = "/org/lifeline/explorer/page/";
    private static final List<String> SCRIPTS =
            List.of("units.js", "design.js", "picture.js", "curves.js", "play.js", "app.js");

    private final String version;
    private final String commit;

    /**
     * A page of a version.
     *
     * @param version version of the library
     * @param commit state of the source
     */
    public ExplorerPage(String version, String commit) {
        this.version = version;
        this.commit = commit;
    }

    /**
     * The page with a design in it.
     *
     * @param design a design file that was read without a violation
     * @return the page, HTML
     * @throws IllegalStateException if the compiled library is missing from the program
     */
    public String write(String design) {
        StringBuilder script = new StringBuilder();
        SCRIPTS.forEach(s -> script.append(part(s).replaceFirst("^'use strict';\n", "")));
        String code = "'use strict';\n" + script;
        String style = part("page.css");
        Map<String, String> slots = new LinkedHashMap<>();
        slots.put("policy", policy(code, style));
        slots.put("style", style);
        slots.put("version", InertText.plain(version));
        slots.put("limits", String.join("; ", ModelLimits.list()));
        slots.put("design", data(design));
        slots.put("lessons", data(part("lessons.json")));
        slots.put("engine", Base64.getEncoder().encodeToString(packed(engine())));
        slots.put("script", code);
        return filled(part("page.html").replace("id=\"engine\"", "id=\"engine\" data-facts='" + facts() + "'"), slots);
    }

    /** Fills each slot once, so that nothing inside of a part is taken for a slot. */
    private static String filled(String page, Map<String, String> slots) {
        StringBuilder out = new StringBuilder();
        int at = 0;
        while (true) {
            int open = page.indexOf("{{", at);
            if (open < 0) {
                return out.append(page, at, page.length()).toString();
            }
            int close = page.indexOf("}}", open);
            String name = page.substring(open + 2, close);
            String value = slots.get(name);
            if (value == null) {
                throw new IllegalStateException("the page has no part for the slot " + name);
            }
            out.append(page, at, open).append(value);
            at = close + 2;
        }
    }

    private static String policy(String script, String style) {
        return "default-src 'none'; script-src 'sha256-" + hash(script) + "'; style-src 'sha256-" + hash(style)
                + "'; worker-src blob:; base-uri 'none'; form-action 'none'";
    }

    private static String hash(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }

    private String facts() {
        return "{\"version\":\"" + plain(version) + "\",\"commit\":\"" + plain(commit) + "\",\"compiler\":\"TeaVM\"}";
    }

    private static String plain(String text) {
        return text.replaceAll("[^A-Za-z0-9.+_-]", "");
    }

    /** JSON that cannot end the element in which it stands. */
    private static String data(String json) {
        return json.strip().replace("<", "\\u003c");
    }

    /** What a worker of the page runs: the compiled library and what hands it questions. */
    private static String engine() {
        return "var exports = {};\n" + read(ENGINE) + "\n" + part("worker.js");
    }

    private static byte[] packed(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(bytes) {
            {
                def.setLevel(java.util.zip.Deflater.BEST_COMPRESSION);
            }
        }) {
            out.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("packing in memory failed", e);
        }
        return bytes.toByteArray();
    }

    private static String part(String name) {
        return read(PARTS + name);
    }

    private static String read(String name) {
        try (InputStream in = ExplorerPage.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(
                        "the program was built without " + name + "; build it with: mvn -q -DskipTests package");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("a part of the program cannot be read", e);
        }
    }
}
