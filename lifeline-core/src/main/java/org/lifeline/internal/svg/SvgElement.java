package org.lifeline.internal.svg;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Writes elements of SVG with their attributes. */
public final class SvgElement {
    private SvgElement() {}

    /** A number with two decimals at most. */
    public static String n(double value) {
        BigDecimal b =
                BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
        return b.signum() == 0 ? "0" : b.toPlainString();
    }

    /**
     * Writes an element.
     *
     * @param out where to
     * @param tag its name
     * @param content what it holds, as markup; null for an element that holds nothing
     * @param attributes names and values in turn; an attribute whose value is empty is left out
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    static void write(StringBuilder out, String tag, @Nullable String content, String... attributes) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("interrupted");
        }
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            if (!attributes[i + 1].isEmpty()) {
                out.append(' ')
                        .append(attributes[i])
                        .append("=\"")
                        .append(attributes[i + 1])
                        .append('"');
            }
        }
        out.append(content == null ? "/>" : ">" + content + "</" + tag + ">");
    }

    static String[] attributes(String[] first, String... more) {
        return Stream.concat(Arrays.stream(first), Arrays.stream(more)).toArray(String[]::new);
    }
}
