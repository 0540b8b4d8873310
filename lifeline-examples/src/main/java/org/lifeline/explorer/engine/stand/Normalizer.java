package org.lifeline.explorer.engine.stand;

import org.teavm.jso.JSBody;

/** Stands in for {@link java.text.Normalizer}: the browser has the same forms of Unicode. */
public final class Normalizer {
    private Normalizer() {}

    /** The forms that are asked for. */
    public enum Form {
        /** Compatibility decomposition, then canonical composition. */
        NFKC
    }

    /**
     * A text in a form.
     *
     * @param text the text
     * @param form the form
     * @return the text in that form
     */
    public static String normalize(CharSequence text, Form form) {
        return inBrowser(text.toString(), form.name());
    }

    @JSBody(
            params = {"text", "form"},
            script = "return text.normalize(form);")
    private static native String inBrowser(String text, String form);
}
