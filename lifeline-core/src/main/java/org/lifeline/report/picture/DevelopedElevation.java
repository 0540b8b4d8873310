package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Hatch;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.SvgCanvas.Box;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.report.document.QuantityKind;

/**
 * The elevation of a line developed along its length: where a distance along the line and an elevation lie in the picture,
 * and what every such elevation shows, the cable and the obstructions below. Lengths are to scale; heights are drawn as many
 * times larger as it takes to see the sag.
 */
final class DevelopedElevation {
    /** How many times larger heights may be drawn [-]. */
    private static final double[] EXAGGERATIONS = {1, 2, 5, 10, 20, 50};

    /** Intervals of a piece of cable, enough to look smooth. */
    static final int INTERVALS = 24;

    private static final int TICKS = 7;

    /** Obstructions and walking levels end one unit above the lower edge at the latest [user units]. */
    private static final double EDGE = 1;

    /**
     * The room of an elevation in a picture.
     *
     * @param across left and right edge [user units]
     * @param high least height at which heights are not drawn larger, and most height [user units]
     */
    record Frame(Range across, Range high) {}

    private final Lifeline line;
    private final UnitSystem system;
    private final Range heights;
    private final double[] offset;
    private final AxisScale x;
    private final double exaggeration;
    private final double high;
    private AxisScale z;
    private double bottom;

    /**
     * The scales.
     *
     * @param line the line
     * @param system the units of the scales
     * @param heights lowest and highest elevation that is drawn [unit of length of the system]
     * @param frame the room
     */
    DevelopedElevation(Lifeline line, UnitSystem system, Range heights, Frame frame) {
        this.line = line;
        this.system = system;
        this.heights = heights;
        this.offset = offsets(line);
        double length = QuantityKind.LENGTH.in(end(), system);
        double extent = heights.to() - heights.from();
        double left = frame.across().from();
        double scale = (frame.across().to() - left) / length;
        double times = 1;
        for (double e : EXAGGERATIONS) {
            times = e;
            if (scale * e * extent >= frame.high().from()) {
                break;
            }
        }
        scale = Math.min(scale, frame.high().to() / (times * extent));
        exaggeration = times;
        x = new AxisScale(new Range(0, length), new Range(left, left + scale * length), TICKS);
        high = scale * times * extent;
        z = new AxisScale(heights, new Range(high, 0), TICKS);
        bottom = high;
    }

    /** Distances of the supports along a line [m]. */
    static double[] offsets(Lifeline line) {
        double[] offset = new double[line.spans() + 1];
        for (int i = 1; i <= line.spans(); i++) {
            offset[i] = offset[i - 1] + line.run(i);
        }
        return offset;
    }

    /** Moves the elevation down, below whatever stands above it [user units]. */
    void moveTo(double top) {
        bottom = top + high;
        z = new AxisScale(heights, new Range(bottom, top), TICKS);
    }

    /** How many times larger heights are drawn than lengths [-]. */
    int exaggeration() {
        return (int) exaggeration;
    }

    /** Lower edge [user units]. */
    double bottom() {
        return bottom;
    }

    AxisScale x() {
        return x;
    }

    AxisScale z() {
        return z;
    }

    /** Distance of a support along the line [m]. */
    double offset(int support) {
        return offset[support];
    }

    /** Length of the whole line in plan [m]. */
    double end() {
        return offset[line.spans()];
    }

    /** Where a distance along the line [m] lies in the picture [user units]. */
    double px(double along) {
        return x.at(QuantityKind.LENGTH.in(along, system));
    }

    /** Where an elevation [m] lies in the picture [user units]. */
    double pz(double elevation) {
        return z.at(QuantityKind.LENGTH.in(elevation, system));
    }

    /** Tells whether an elevation [m] lies within the picture. */
    boolean shows(double elevation) {
        return pz(elevation) < bottom - EDGE;
    }

    /** Where a support stands in the picture. */
    Spot support(int number) {
        return new Spot(
                px(offset[number]), pz(line.supports().get(number).position().z()));
    }

    /** Distance along the line of a point of a span [m]. */
    double along(int span, Point p) {
        Point a = line.supports().get(span - 1).position();
        Point b = line.supports().get(span).position();
        double run = line.run(span);
        return offset[span - 1] + ((p.x() - a.x()) * (b.x() - a.x()) + (p.y() - a.y()) * (b.y() - a.y())) / run;
    }

    private Spot spot(int span, Point p) {
        return new Spot(px(along(span, p)), pz(p.z()));
    }

    /** Draws the cable. */
    void cable(SvgCanvas c, Pen pen, LineEquilibrium state) {
        for (SpanState s : state.spans()) {
            List<Spot> points = new ArrayList<>();
            points.add(spot(s.number(), s.firstSupport()));
            for (Point p : s.shape(INTERVALS)) {
                points.add(spot(s.number(), p));
            }
            points.add(spot(s.number(), s.secondSupport()));
            c.polyline(pen, points);
        }
    }

    /** Draws what of an obstruction lies below the line: its box; empty where it lies beside the line or too deep. */
    Optional<Box> obstruction(SvgCanvas c, Obstruction o, Hatch hatch) {
        double from = Math.max(0, o.from());
        double to = Math.min(end(), o.to());
        if (to <= from || !shows(o.elevation())) {
            return Optional.empty();
        }
        double top = pz(o.elevation());
        Box box = new Box(px(from), top, px(to) - px(from), bottom - top);
        c.fill(box, hatch);
        c.line(Pen.INK, px(from), top, px(to), top);
        return Optional.of(box);
    }
}
