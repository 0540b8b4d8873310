package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.InertText;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Hatch;
import org.lifeline.internal.svg.LabelSpacing;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.TextWidth;
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
    private static final int FEW_SUPPORTS = 9;
    private static final double LABEL_GAP = 14;
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
    private final List<SupportLabels.Label> labels;
    private final DevelopedElevation elevation;
    private final double top;
    private final double planTop;
    private final SystemPlan plan;
    private final SvgCanvas c;

    private SystemPicture(LifelineDesign design, LineEquilibrium installed, UnitChoice choice) {
        this.design = design;
        this.line = design.line();
        this.installed = installed;
        this.q = Quantities.in(choice == UnitChoice.US_CUSTOMARY ? choice : UnitChoice.SI);
        this.system = choice.leading();
        elevation = new DevelopedElevation(
                line,
                system,
                heights(),
                new DevelopedElevation.Frame(new Range(LEFT, WIDTH - RIGHT), new Range(LOWEST_HIGH, MOST_HIGH)));
        SupportLabels placed = new SupportLabels(new Range(8, WIDTH - 8));
        labels = placeLabels(placed);
        top = TITLE + placed.rows() * ROW;
        elevation.moveTo(top);
        plan = new SystemPlan(line, system, WIDTH);
        planTop = elevation.bottom() + 3 * DIMENSION + 24;
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
        elevation.cable(c, Pen.FIRST, installed);
        absorbers();
        supports();
        dimensions();
        plan.draw(c, planTop);
        String description = "Elevation developed along the line and plan of " + (line.spans() + 1) + " supports and "
                + line.spans() + (line.spans() == 1 ? " span" : " spans") + ", "
                + q.result(QuantityKind.LENGTH, elevation.end()) + " long. "
                + (elevation.exaggeration() == 1
                        ? "The elevation is drawn to true scale."
                        : "In the elevation lengths are to scale and heights are drawn " + elevation.exaggeration()
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
                    q.result(QuantityKind.LENGTH, elevation.offset(i)),
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
            for (Point p : s.shape(DevelopedElevation.INTERVALS)) {
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

    private String length(double value) {
        return QuantityKind.LENGTH.number(value, system);
    }

    private boolean isDetailed(int support) {
        return line.supports().size() <= FEW_SUPPORTS || support == 0 || support == line.spans();
    }

    /** Number and name of every support, with its details where there is room for them. */
    private List<SupportLabels.Label> placeLabels(SupportLabels placed) {
        List<SupportLabels.Label> list = new ArrayList<>();
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            List<String> text = new ArrayList<>();
            text.add((i + 1) + " " + TextWidth.cut(s.id(), 150));
            if (isDetailed(i)) {
                text.addAll(SupportDetails.rows(s, q));
            }
            list.add(placed.place(elevation.px(elevation.offset(i)), text));
        }
        return list;
    }

    private void supports() {
        for (int i = 0; i < line.supports().size(); i++) {
            Spot at = elevation.support(i);
            SupportLabels.Label label = labels.get(i);
            List<String> text = label.lines();
            double last = top - ROW * label.row() - 6;
            c.line(Pen.THIN, at.x(), last + 4, at.x(), at.y() - 7);
            for (int k = 0; k < text.size(); k++) {
                double y = last - ROW * (text.size() - 1 - k);
                if (k == 0) {
                    c.bold(label.left(), y, "start", text.get(0));
                } else {
                    c.text(label.left(), y, "start", text.get(k));
                }
            }
            DrawingMarks.support(c, line.supports().get(i), at);
        }
    }

    private void absorbers() {
        for (int end : List.of(0, line.spans())) {
            Support s = line.supports().get(end);
            s.inlineAbsorber().ifPresent(a -> {
                boolean first = end == 0;
                double at = elevation.px(elevation.offset(end)) + (first ? 14 : -14 - ABSORBER_WIDE);
                double y = elevation.pz(s.position().z());
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
            double at = elevation.pz(level);
            c.line(Pen.SIXTH, elevation.px(0), at, elevation.px(elevation.end()), at);
            c.text(elevation.px(0) + 8, at - 4, "start", "walking level");
        }
    }

    /** An obstruction of which something is drawn, and where. */
    private record Drawn(Obstruction obstruction, SvgCanvas.Box box) {
        double middle() {
            return box.left() + box.width() / 2;
        }
    }

    private void obstructions() {
        List<Drawn> drawn = new ArrayList<>();
        for (Obstruction o : design.clearance().obstructions()) {
            elevation.obstruction(c, o, OBSTRUCTION).ifPresent(box -> drawn.add(new Drawn(o, box)));
        }
        for (Drawn each : drawn) {
            SvgCanvas.Box box = each.box();
            double right = box.left() + box.width();
            c.line(Pen.INK, box.left(), box.top(), box.left(), elevation.bottom());
            c.line(Pen.INK, right, box.top(), right, elevation.bottom());
            Obstruction o = each.obstruction();
            String extent = length(o.from()) + " to " + length(o.to());
            String beside = o.distance() == 0 ? "" : length(o.distance()) + " beside the line";
            double middle = each.middle();
            double room = Math.max(60, box.width() - 6);
            if (box.height() > TALL) {
                // Where its top comes near the line, in it.
                double y = box.top() + box.height() / 2;
                c.text(middle, y - ROW, "middle", TextWidth.cut("obstruction", room));
                c.text(middle, y, "middle", TextWidth.cut(extent, room));
                if (!beside.isEmpty()) {
                    c.text(middle, y + ROW, "middle", TextWidth.cut(beside, room));
                }
            } else {
                String text = "obstruction, " + extent + (beside.isEmpty() ? "" : ", " + beside);
                c.text(middle, box.top() - 5, "middle", TextWidth.cut(text, Math.max(room, roomAbove(each, drawn))));
            }
        }
    }

    /** Width above an obstruction up to the ends of the line, and half way to where its neighbours have their words. */
    private double roomAbove(Drawn here, List<Drawn> drawn) {
        double room = 2 * Math.min(here.middle() - elevation.px(0), elevation.px(elevation.end()) - here.middle());
        for (Drawn other : drawn) {
            if (!other.equals(here)) {
                room = Math.min(room, Math.abs(other.middle() - here.middle()) - 6);
            }
        }
        return room;
    }

    /** Elevations at the left edge: of supports, walking levels and obstructions. */
    private void heightMarks() {
        List<Double> values = new ArrayList<>();
        line.supports().forEach(s -> values.add(s.position().z()));
        design.workers().forEach(w -> values.add(w.walkingLevel()));
        design.clearance().obstructions().forEach(o -> values.add(o.elevation()));
        List<Double> shown =
                values.stream().distinct().filter(elevation::shows).sorted().toList();
        double[] places = new LabelSpacing(LABEL_GAP, new Range(top - 4, elevation.bottom()))
                .spread(shown.stream().mapToDouble(elevation::pz).toArray());
        for (int i = 0; i < shown.size(); i++) {
            double at = elevation.pz(shown.get(i));
            c.line(Pen.GRID, LEFT - 8, at, elevation.px(elevation.end()), at);
            c.line(Pen.THIN, LEFT - 20, places[i], LEFT - 8, at);
            c.text(LEFT - 23, places[i] + 4, "end", length(shown.get(i)));
        }
        c.upward(18, (top + elevation.bottom()) / 2, "elevation [" + QuantityKind.LENGTH.unit(system) + "]");
    }

    /** The chain of spans, and the whole below it. */
    private void dimensions() {
        double y = elevation.bottom() + DIMENSION;
        for (int i = 1; i <= line.spans(); i++) {
            dimension(elevation.px(elevation.offset(i - 1)), elevation.px(elevation.offset(i)), y, length(line.run(i)));
        }
        if (line.spans() > 1) {
            dimension(elevation.px(0), elevation.px(elevation.end()), y + DIMENSION, length(elevation.end()));
        }
        String scale = elevation.exaggeration() == 1
                ? "elevation to true scale"
                : "elevation: heights " + elevation.exaggeration() + " times as large as lengths";
        c.text(
                elevation.px(0),
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
        if (TextWidth.of(value) + 6 < to - from) {
            c.text((from + to) / 2, y - 4, "middle", value);
        }
    }
}
