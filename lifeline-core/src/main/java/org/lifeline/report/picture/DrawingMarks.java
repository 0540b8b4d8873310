package org.lifeline.report.picture;

import java.math.BigDecimal;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.model.Support;

/** Signs that every drawing of a line uses: supports and the scale bar. */
final class DrawingMarks {
    private static final double HALF_ANCHOR = 6;
    private static final double RING = 5;
    private static final double HALF_TICK = 4;
    private static final double TO_TEXT = 8;

    private DrawingMarks() {}

    /** A filled square for an end anchor, a ring for an intermediate anchor. */
    static void support(SvgCanvas c, Support s, Spot at) {
        if (s.isEnd()) {
            c.square(Pen.INK, at, HALF_ANCHOR);
        } else {
            c.ring(Pen.INK, at, RING);
        }
    }

    /**
     * A scale bar with its length.
     *
     * @param c the canvas
     * @param start its left end
     * @param scale size of one unit of length in the picture [user units]
     * @param length its length [unit of length of the picture]
     * @param words what follows its length, with the unit
     * @return where the bar ends [user units]
     */
    static double scaleBar(SvgCanvas c, Spot start, double scale, BigDecimal length, String words) {
        double x = start.x();
        double y = start.y();
        double end = x + length.doubleValue() * scale;
        c.line(Pen.INK, x, y, end, y);
        c.line(Pen.INK, x, y - HALF_TICK, x, y + HALF_TICK);
        c.line(Pen.INK, end, y - HALF_TICK, end, y + HALF_TICK);
        c.text(
                end + TO_TEXT,
                y + HALF_TICK,
                "start",
                length.stripTrailingZeros().toPlainString() + " " + words);
        return end;
    }
}
