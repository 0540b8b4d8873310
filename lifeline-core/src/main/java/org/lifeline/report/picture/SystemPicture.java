package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.InertText;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.LabelSpacing;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.SvgCanvas.Box;
import org.lifeline.internal.svg.SvgCanvas.Hatch;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Support;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws the system as installed, with dimensions: the elevation developed along the line, with spans, heights, supports with
 * passage, stiffness and capacity, absorbers, walking levels and obstructions, and below it the plan to true scale.
 *
 * @since 1.0.0
 */
public final class SystemPicture {
    private static final double WIDTH = 860;
    static final double LEFT = 96;
    static final double RIGHT = 40;
    private static final double ROW = 15;
    private static final double TITLE = 40;
    private static final double LOWEST_HIGH = 150;
    private static final double MOST_HIGH = 300;
    private static final double DIMENSION = 30;
    private static final double[] EXAGGERATIONS = {1, 2, 5, 10, 20, 50};
    private static final int INTERVALS = 24;
    private static final int FEW_SUPPORTS = 9;
    private static final int TICKS = 7;
    private static final double LABEL_GAP = 14;
    private static final double HALF_ANCHOR = 6;
    private static final double RING = 5;
    private static final double ABSORBER_WIDE = 46;
    private static final double ABSORBER_HIGH = 4;
    private static final double TALL = 60;

    /** Depth below everything else beyond which an obstruction is not worth shrinking the drawing for [m]. */
    private static final double FAR_BELOW = 6;

    private static final Hatch OBSTRUCTION = new Hatch("sy", 0);

    private final LifelineDesign design;
    private final Lifeline line;
    private final LineEquilibrium installed;
    private final Quantities q;
    private final UnitSystem system;
    private final double[] offset;
    private final List<List<String>> labels = new ArrayList<>();
    private final double[] labelLeft;
    private final int[] labelRow;
    private final AxisScale x;
    private final AxisScale z;
    private final double exaggeration;
    private final double top;
    private final double bottom;
    private final double planTop;
    private final SystemPlan plan;
    private final SvgCanvas c;

    private SystemPicture(LifelineDesign design, LineEquilibrium installed, UnitChoice choice) {
        this.design = design;
        this.line = design.line();
        this.installed = installed;
        this.q = Quantities.in(choice == UnitChoice.US_CUSTOMARY ? choice : UnitChoice.SI);
        this.system = choice.leading();
        int n = line.supports().size();
        offset = new double[n];
        for (int i = 1; i < n; i++) {
            offset[i] = offset[i - 1] + line.run(i);
        }
        double length = QuantityKind.LENGTH.in(offset[n - 1], system);
        Range heights = heights();
        double extent = heights.to() - heights.from();
        double scale = (WIDTH - LEFT - RIGHT) / length;
        double times = 1;
        for (double e : EXAGGERATIONS) {
            times = e;
            if (scale * e * extent >= LOWEST_HIGH) {
                break;
            }
        }
        scale = Math.min(scale, MOST_HIGH / (times * extent));
        exaggeration = times;
        x = new AxisScale(new Range(0, length), new Range(LEFT, LEFT + scale * length), TICKS);
        labelLeft = new double[n];
        labelRow = new int[n];
        top = TITLE + placeLabels() * ROW;
        bottom = top + scale * times * extent;
        z = new AxisScale(heights, new Range(bottom, top), TICKS);
        plan = new SystemPlan(line, system, WIDTH);
        planTop = bottom + 3 * DIMENSION + 24;
        c = new SvgCanvas(WIDTH, planTop + plan.high() + 2 * DIMENSION + 24);
    }

    /**
     * Draws the system.
     *
     * @param design the design
     * @param installed its line as installed
     * @param choice the units; the drawing is in the leading system
     * @return the picture
     */
    public static Picture draw(LifelineDesign design, LineEquilibrium installed, UnitChoice choice) {
        return new SystemPicture(design, installed, choice).draw();
    }

    private Picture draw() {
        String title = "System as installed: elevation and plan";
        c.bold(12, 20, "start", title);
        c.hatch(OBSTRUCTION, Pen.THIN);
        obstructions();
        walkingLevels();
        heightMarks();
        cable();
        absorbers();
        supports();
        dimensions();
        plan.draw(c, planTop);
        String description = "Elevation developed along the line and plan of " + (line.spans() + 1) + " supports and "
                + line.spans() + (line.spans() == 1 ? " span" : " spans") + ", "
                + q.result(QuantityKind.LENGTH, offset[line.spans()]) + " long. "
                + (exaggeration == 1
                        ? "The elevation is drawn to true scale."
                        : "In the elevation lengths are to scale and heights are drawn " + (int) exaggeration
                                + " times as large.")
                + " The plan is to true scale.";
        return new Picture(title, description, c.finish(title, description), data().build());
    }

    private TableBuilder data() {
        TableBuilder t = new TableBuilder("Supports of the drawing")
                .text("Support")
                .number("Along the line")
                .number("Elevation")
                .text("Cable, stiffness, capacity");
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            t.row(
                    InertText.name(s.id()),
                    q.result(QuantityKind.LENGTH, offset[i]),
                    q.result(QuantityKind.LENGTH, s.position().z()),
                    String.join("; ", SupportDetails.of(s, q)));
        }
        return t;
    }

    private Range heights() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Support s : line.supports()) {
            low = Math.min(low, s.position().z());
            high = Math.max(high, s.position().z());
        }
        for (SpanState s : installed.spans()) {
            for (Point p : s.shape(INTERVALS)) {
                low = Math.min(low, p.z());
            }
        }
        low = Math.min(
                low,
                design.workers().stream()
                        .mapToDouble(w -> w.walkingLevel())
                        .min()
                        .orElse(low));
        for (Obstruction o : design.clearance().obstructions()) {
            low = Math.min(low, Math.max(o.elevation(), low - FAR_BELOW));
        }
        double pad = 0.06 * (high - low) + 0.25;
        return new Range(QuantityKind.LENGTH.in(low - pad, system), QuantityKind.LENGTH.in(high + 0.15, system));
    }

    private double px(double along) {
        return x.at(QuantityKind.LENGTH.in(along, system));
    }

    private double pz(double elevation) {
        return z.at(QuantityKind.LENGTH.in(elevation, system));
    }

    private String length(double value) {
        return QuantityKind.LENGTH.number(value, system);
    }

    private boolean isDetailed(int support) {
        return line.supports().size() <= FEW_SUPPORTS || support == 0 || support == line.spans();
    }

    /** Finds rows for the labels of the supports, from the lowest up, so that none runs into another. */
    private int placeLabels() {
        List<Double> free = new ArrayList<>();
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            List<String> text = new ArrayList<>();
            text.add((i + 1) + " " + SvgCanvas.cut(s.id(), 150));
            if (isDetailed(i)) {
                text.addAll(SupportDetails.rows(s, q));
            }
            labels.add(text);
            double wide = text.stream().mapToDouble(SvgCanvas::width).max().orElse(0);
            labelLeft[i] = Math.min(Math.max(px(offset[i]) - wide / 2, 8), WIDTH - 8 - wide);
            int row = 0;
            while (true) {
                boolean blocked = false;
                for (int k = row; k < Math.min(free.size(), row + text.size()); k++) {
                    blocked |= free.get(k) > labelLeft[i];
                }
                if (!blocked) {
                    break;
                }
                row++;
            }
            labelRow[i] = row;
            for (int k = row; k < row + text.size(); k++) {
                while (free.size() <= k) {
                    free.add(0.0);
                }
                free.set(k, labelLeft[i] + wide + 12);
            }
        }
        return free.size();
    }

    private void supports() {
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            Spot at = new Spot(px(offset[i]), pz(s.position().z()));
            List<String> text = labels.get(i);
            double last = top - ROW * labelRow[i] - 6;
            c.line(Pen.THIN, at.x(), last + 4, at.x(), at.y() - 7);
            for (int k = 0; k < text.size(); k++) {
                double y = last - ROW * (text.size() - 1 - k);
                if (k == 0) {
                    c.bold(labelLeft[i], y, "start", text.get(0));
                } else {
                    c.text(labelLeft[i], y, "start", text.get(k));
                }
            }
            mark(c, s, at);
        }
    }

    static void mark(SvgCanvas c, Support s, Spot at) {
        if (s.isEnd()) {
            c.square(Pen.INK, at, HALF_ANCHOR);
        } else {
            c.ring(Pen.INK, at, RING);
        }
    }

    private void cable() {
        for (SpanState s : installed.spans()) {
            Support from = line.supports().get(s.number() - 1);
            Support to = line.supports().get(s.number());
            List<Spot> points = new ArrayList<>();
            points.add(new Spot(px(offset[s.number() - 1]), pz(from.position().z())));
            for (Point p : s.shape(INTERVALS)) {
                double along = from.position().horizontalDistance(p);
                points.add(new Spot(px(offset[s.number() - 1] + along), pz(p.z())));
            }
            points.add(new Spot(px(offset[s.number()]), pz(to.position().z())));
            c.polyline(Pen.FIRST, points);
        }
    }

    private void absorbers() {
        for (int end : List.of(0, line.spans())) {
            Support s = line.supports().get(end);
            s.inlineAbsorber().ifPresent(a -> {
                boolean first = end == 0;
                double at = px(offset[end]) + (first ? 14 : -14 - ABSORBER_WIDE);
                double y = pz(s.position().z());
                c.polygon(
                        Pen.SECOND,
                        new Spot(at, y - ABSORBER_HIGH),
                        new Spot(at + ABSORBER_WIDE, y - ABSORBER_HIGH),
                        new Spot(at + ABSORBER_WIDE, y + ABSORBER_HIGH),
                        new Spot(at, y + ABSORBER_HIGH));
            });
        }
    }

    private void walkingLevels() {
        List<Double> levels = design.workers().stream()
                .map(w -> w.walkingLevel())
                .distinct()
                .sorted()
                .toList();
        for (double level : levels) {
            double at = pz(level);
            c.line(Pen.SIXTH, px(0), at, px(offset[line.spans()]), at);
            c.text(px(0) + 8, at - 4, "start", "walking level");
        }
    }

    private void obstructions() {
        double end = offset[line.spans()];
        for (Obstruction o : design.clearance().obstructions()) {
            double from = Math.max(0, o.from());
            double to = Math.min(end, o.to());
            double at = pz(o.elevation());
            if (to <= from || at >= bottom - 1) {
                continue;
            }
            Box box = new Box(px(from), at, px(to) - px(from), bottom - at);
            c.fill(box, OBSTRUCTION);
            c.line(Pen.INK, px(from), at, px(to), at);
            c.line(Pen.INK, px(from), at, px(from), bottom);
            c.line(Pen.INK, px(to), at, px(to), bottom);
            String extent = length(o.from()) + " to " + length(o.to());
            String beside = o.distance() == 0 ? "" : length(o.distance()) + " beside the line";
            double middle = (px(from) + px(to)) / 2;
            double room = Math.max(60, box.width() - 6);
            if (bottom - at > TALL) {
                // Where its top comes near the line, in it.
                double y = (at + bottom) / 2;
                c.text(middle, y - ROW, "middle", SvgCanvas.cut("obstruction", room));
                c.text(middle, y, "middle", SvgCanvas.cut(extent, room));
                if (!beside.isEmpty()) {
                    c.text(middle, y + ROW, "middle", SvgCanvas.cut(beside, room));
                }
            } else {
                String text = "obstruction, " + extent + (beside.isEmpty() ? "" : ", " + beside);
                c.text(middle, at - 5, "middle", SvgCanvas.cut(text, room));
            }
        }
    }

    /** Elevations at the left edge: of supports, walking levels and obstructions. */
    private void heightMarks() {
        List<Double> values = new ArrayList<>();
        line.supports().forEach(s -> values.add(s.position().z()));
        design.workers().forEach(w -> values.add(w.walkingLevel()));
        design.clearance().obstructions().forEach(o -> values.add(o.elevation()));
        List<Double> shown = values.stream()
                .distinct()
                .filter(v -> pz(v) < bottom - 1)
                .sorted()
                .toList();
        double[] places = new LabelSpacing(LABEL_GAP, new Range(top - 4, bottom))
                .spread(shown.stream().mapToDouble(this::pz).toArray());
        for (int i = 0; i < shown.size(); i++) {
            double at = pz(shown.get(i));
            c.line(Pen.GRID, LEFT - 8, at, px(offset[line.spans()]), at);
            c.line(Pen.THIN, LEFT - 20, places[i], LEFT - 8, at);
            c.text(LEFT - 23, places[i] + 4, "end", length(shown.get(i)));
        }
        c.upward(18, (top + bottom) / 2, "elevation [" + QuantityKind.LENGTH.unit(system) + "]");
    }

    /** The chain of spans, and the whole below it. */
    private void dimensions() {
        double y = bottom + DIMENSION;
        for (int i = 1; i <= line.spans(); i++) {
            dimension(px(offset[i - 1]), px(offset[i]), y, length(line.run(i)));
        }
        if (line.spans() > 1) {
            dimension(px(0), px(offset[line.spans()]), y + DIMENSION, length(offset[line.spans()]));
        }
        String scale = exaggeration == 1
                ? "elevation to true scale"
                : "elevation: heights " + (int) exaggeration + " times as large as lengths";
        c.text(
                px(0),
                y + 2 * DIMENSION,
                "start",
                "lengths in " + QuantityKind.LENGTH.unit(system) + " along the line; " + scale);
    }

    /** A dimension line with ticks at its ends, and its value where there is room, else turned out of the way. */
    private void dimension(double from, double to, double y, String value) {
        c.line(Pen.THIN, from, y, to, y);
        for (double at : new double[] {from, to}) {
            c.line(Pen.THIN, at, y - 9, at, y + 5);
            c.line(Pen.INK, at - 4, y + 4, at + 4, y - 4);
        }
        if (SvgCanvas.width(value) + 6 < to - from) {
            c.text((from + to) / 2, y - 4, "middle", value);
        }
    }
}
