package org.lifeline.report.picture;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Hatch;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws the elevation of a line before a fall and at its lowest point, developed along the line, with the worker, what lies
 * below, and the clearance account beside it on the same scale of heights. Lengths are to scale; where heights are drawn
 * larger, the picture says how many times.
 *
 * @since 1.0.0
 */
public final class ElevationPicture {
    private static final double LEFT = 64;
    private static final double WIDE = 590;
    private static final double WIDTH = ClearanceLadder.RIGHT;
    private static final double TALL = 60;
    private static final double LOWEST_HIGH = 230;
    private static final double MOST_HIGH = 440;
    private static final int FEW_SUPPORTS = 9;
    private static final int SCALE_BARS = 5;
    private static final double LABELS = 46;
    private static final double ROW = 16;
    private static final Hatch OBSTRUCTION = new Hatch("ob", 0);

    private final ArrestResult arrest;
    private final List<Obstruction> obstructions;
    private final Quantities quantities;
    private final UnitSystem system;
    private final Lifeline line;
    private final DevelopedElevation elevation;
    private final SvgCanvas c;
    private final String title;
    private final Map<Integer, SupportLabels.Label> labels = new LinkedHashMap<>();
    private final int labelRows;

    private ElevationPicture(ArrestResult arrest, List<Obstruction> obstructions, UnitChoice choice) {
        this.arrest = arrest;
        this.obstructions = obstructions;
        this.quantities = Quantities.in(choice);
        this.system = choice.leading();
        this.line = arrest.line();
        this.title = "Elevation: " + CaseNames.name(arrest, Quantities.in(choice));
        elevation = new DevelopedElevation(
                line,
                system,
                heights(),
                new DevelopedElevation.Frame(new Range(LEFT, LEFT + WIDE), new Range(LOWEST_HIGH, MOST_HIGH)));
        labelRows = placeLabels();
        double top = LABELS + ROW * labelRows;
        elevation.moveTo(top);
        c = new SvgCanvas(WIDTH, Math.max(elevation.bottom() + 74, top + 190));
    }

    /**
     * Draws the picture of an arrest.
     *
     * @param arrest the arrest
     * @param obstructions what lies below
     * @param choice the units; the drawing is in the leading system
     * @return the picture
     */
    public static Picture draw(ArrestResult arrest, List<Obstruction> obstructions, UnitChoice choice) {
        return new ElevationPicture(arrest, obstructions, choice).draw();
    }

    private Range heights() {
        double low = Math.min(
                arrest.clearance().requiredElevation(), arrest.clearanceWorker().walkingLevel());
        double high = arrest.attachmentBefore().z();
        double length =
                line.along(Place.atSupport(line.supports().get(line.spans()).id()));
        for (Support s : line.supports()) {
            high = Math.max(high, s.position().z());
            low = Math.min(low, s.position().z());
        }
        high = Math.max(high, arrest.firstFaller().harnessElevation() + 0.35);
        for (Obstruction o : obstructions) {
            if (o.from() <= length && o.to() >= 0) {
                // What lies far below is not worth shrinking the picture for.
                low = Math.min(low, Math.max(o.elevation(), low - 6));
            }
        }
        double pad = 0.04 * (high - low) + 0.25;
        return new Range(QuantityKind.LENGTH.in(low - pad, system), QuantityKind.LENGTH.in(high + 0.1, system));
    }

    private Picture draw() {
        c.heading(title, WIDTH - 24);
        c.hatch(OBSTRUCTION, Pen.THIN);
        axis();
        drawObstructions();
        WorkerFigures figures = new WorkerFigures(arrest, elevation, c);
        figures.leaders(ClearanceLadder.LEFT);
        drawWalkingLevel(figures);
        elevation.cable(c, Pen.GHOST, arrest.before());
        elevation.cable(c, Pen.FIRST, arrest.peak());
        drawSupports();
        figures.draw();
        new ClearanceLadder(arrest.clearance(), system, c, elevation.z()).draw(elevation.bottom());
        drawFoot();
        return new Picture(
                title, description(), c.finish(title, description()), PlanPicture.data(title, arrest, quantities));
    }

    private String description() {
        Clearance a = arrest.clearance();
        String text = "Line of " + line.spans() + (line.spans() == 1 ? " span" : " spans")
                + " before the fall and at the"
                + " lowest point. The attachment descends "
                + quantities.result(QuantityKind.LENGTH, arrest.lineDescent())
                + "; the lowest point of the worker is at "
                + quantities.result(QuantityKind.LENGTH, a.lowestPoint()) + ".";
        if (a.margin().isPresent()) {
            double m = a.margin().getAsDouble();
            text += m >= 0
                    ? " The clearance margin above the obstruction is " + quantities.result(QuantityKind.LENGTH, m)
                            + "."
                    : " The required clearance reaches " + quantities.result(QuantityKind.LENGTH, -m)
                            + " into the obstruction.";
        }
        return text + " " + scaleNote() + ".";
    }

    private String scaleNote() {
        return elevation.exaggeration() == 1
                ? "Drawn to true scale, heights and lengths alike"
                : "Lengths to scale; heights drawn " + elevation.exaggeration() + " times as large";
    }

    private void axis() {
        double right = elevation.px(elevation.end());
        AxisScale z = elevation.z();
        for (BigDecimal t : z.ticks()) {
            double at = z.at(t.doubleValue());
            c.line(Pen.GRID, LEFT - 14, at, right, at);
            c.text(LEFT - 18, at + 4, "end", z.label(t));
        }
        c.upward(
                16,
                (elevation.bottom() + elevation.support(0).y()) / 2,
                "elevation [" + QuantityKind.LENGTH.unit(system) + "]");
    }

    private void drawObstructions() {
        for (Obstruction o : obstructions) {
            elevation
                    .obstruction(c, o, OBSTRUCTION)
                    .ifPresent(box -> c.text(
                            box.left() + box.width() / 2,
                            box.height() > TALL
                                    ? box.top() + box.height() / 2
                                    : Math.min(elevation.bottom() - 4, box.top() + 16),
                            "middle",
                            TextWidth.cut("obstruction " + number(o.elevation()), Math.max(60, box.width() - 6))));
        }
    }

    private void drawWalkingLevel(WorkerFigures figures) {
        Worker w = arrest.clearanceWorker();
        double at = elevation.pz(w.walkingLevel());
        double end = elevation.end();
        c.line(Pen.SIXTH, elevation.px(0), at, elevation.px(end), at);
        // The label stands at the end of the line that is farther from what hangs there.
        double nearest = elevation.along(arrest.span(), arrest.attachmentAtPeak());
        double left = nearest;
        double right = end - nearest;
        for (LoadPosition load : arrest.peak().loads()) {
            double place = figures.along(load);
            left = Math.min(left, place);
            right = Math.min(right, end - place);
        }
        boolean atEnd = right > left;
        c.text(
                atEnd ? elevation.px(end) - 4 : elevation.px(0) + 4,
                at - 5,
                atEnd ? "end" : "start",
                "walking level " + number(w.walkingLevel()));
    }

    private String number(double value) {
        BigDecimal rounded = QuantityKind.LENGTH.rounded(value, system, 3).stripTrailingZeros();
        return QuantityKind.show(rounded) + " " + QuantityKind.LENGTH.unit(system);
    }

    private boolean isNamed(int support) {
        int span = arrest.span();
        return line.spans() < FEW_SUPPORTS
                || support == 0
                || support == line.spans()
                || support == span
                || support == span - 1;
    }

    private String supportLabel(int i) {
        return TextWidth.cut(line.supports().get(i).id(), 120) + ": "
                + QuantityKind.FORCE.number(arrest.supports().get(i).force(), system) + " "
                + QuantityKind.FORCE.unit(system);
    }

    /** Places the label of every support that is named, and returns how many rows they take. */
    private int placeLabels() {
        SupportLabels placed = new SupportLabels(new Range(8, ClearanceLadder.LEFT - 24));
        for (int i = 0; i <= line.spans(); i++) {
            if (isNamed(i)) {
                labels.put(i, placed.place(elevation.px(elevation.offset(i)), List.of(supportLabel(i))));
            }
        }
        return placed.rows();
    }

    private void drawSupports() {
        for (int i = 0; i <= line.spans(); i++) {
            Spot at = elevation.support(i);
            SupportLabels.Label label = labels.get(i);
            if (label != null) {
                double y = LABELS + ROW * (labelRows - 1 - label.row()) + 6;
                c.line(Pen.THIN, at.x(), y + 5, at.x(), at.y() - 7);
                c.text(label.left(), y, "start", label.lines().get(0));
            }
            DrawingMarks.support(c, line.supports().get(i), at);
        }
    }

    private void drawFoot() {
        double y = elevation.bottom() + 30;
        double end = elevation.px(elevation.end());
        AxisScale x = elevation.x();
        BigDecimal bar = AxisScale.step(x.high() - x.low(), SCALE_BARS);
        double barEnd = DrawingMarks.scaleBar(
                c, new Spot(LEFT, y), x.at(1) - x.at(0), bar, QuantityKind.LENGTH.unit(system) + " along the line");
        double key = Math.max(barEnd + 170, Math.min(end - 150, LEFT + 300));
        c.line(Pen.GHOST, key, y, key + 34, y);
        c.text(key + 40, y + 4, "start", "before the fall");
        c.line(Pen.FIRST, key + 150, y, key + 184, y);
        c.text(key + 190, y + 4, "start", "at the lowest point");
        c.text(LEFT, y + 26, "start", scaleNote() + ". Forces at the supports are those at the lowest point.");
    }
}
