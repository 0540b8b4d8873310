package org.lifeline.report.picture;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.SvgCanvas.Box;
import org.lifeline.internal.svg.SvgCanvas.Hatch;
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
    private static final double[] EXAGGERATIONS = {1, 2, 5, 10, 20, 50};
    private static final int INTERVALS = 24;
    private static final int FEW_SUPPORTS = 9;
    private static final int SCALE_BARS = 5;
    private static final int X_TICKS = 8;
    private static final int Z_TICKS = 7;
    private static final double HALF_ANCHOR = 6;
    private static final double RING = 5;
    private static final Hatch OBSTRUCTION = new Hatch("ob", 0);

    private final ArrestResult arrest;
    private final List<Obstruction> obstructions;
    private final Quantities quantities;
    private final UnitSystem system;
    private final Lifeline line;
    private final double[] offset;
    private final AxisScale x;
    private final AxisScale z;
    private final double exaggeration;
    private final double bottom;
    private final SvgCanvas c;
    private final String title;
    private final double[] labelLeft;
    private final int[] labelRow;
    private int labelRows;

    private ElevationPicture(ArrestResult arrest, List<Obstruction> obstructions, UnitChoice choice) {
        this.arrest = arrest;
        this.obstructions = obstructions;
        this.quantities = Quantities.in(choice);
        this.system = choice.leading();
        this.line = arrest.line();
        this.title = "Elevation: " + CaseNames.name(arrest, Quantities.in(choice));
        offset = new double[line.spans() + 1];
        for (int i = 1; i <= line.spans(); i++) {
            offset[i] = offset[i - 1] + line.run(i);
        }
        double length = QuantityKind.LENGTH.in(offset[line.spans()], system);
        Range heights = heights();
        double extent = heights.to() - heights.from();
        double scale = WIDE / length;
        double times = 1;
        for (double e : EXAGGERATIONS) {
            times = e;
            if (scale * e * extent >= LOWEST_HIGH) {
                break;
            }
        }
        scale = Math.min(scale, MOST_HIGH / (times * extent));
        exaggeration = times;
        x = new AxisScale(new Range(0, length), new Range(LEFT, LEFT + scale * length), X_TICKS);
        labelLeft = new double[line.spans() + 1];
        labelRow = new int[line.spans() + 1];
        placeLabels();
        double top = 46 + 16.0 * labelRows;
        bottom = top + scale * times * extent;
        z = new AxisScale(heights, new Range(bottom, top), Z_TICKS);
        c = new SvgCanvas(WIDTH, Math.max(bottom + 74, top + 190));
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
        for (Support s : line.supports()) {
            high = Math.max(high, s.position().z());
            low = Math.min(low, s.position().z());
        }
        high = Math.max(high, arrest.firstFaller().harnessElevation() + 0.35);
        for (Obstruction o : obstructions) {
            if (o.from() <= offset[line.spans()] && o.to() >= 0) {
                // What lies far below is not worth shrinking the picture for.
                low = Math.min(low, Math.max(o.elevation(), low - 6));
            }
        }
        double pad = 0.04 * (high - low) + 0.25;
        return new Range(QuantityKind.LENGTH.in(low - pad, system), QuantityKind.LENGTH.in(high + 0.1, system));
    }

    private Picture draw() {
        c.bold(12, 22, "start", SvgCanvas.cut(title, WIDTH - 40));
        c.hatch(OBSTRUCTION, Pen.THIN);
        axis();
        drawObstructions();
        drawLeaders();
        drawWalkingLevel();
        drawLine(Pen.GHOST, arrest.before());
        drawLine(Pen.FIRST, arrest.peak());
        drawSupports();
        drawHanging();
        drawStanding();
        drawFallen();
        new ClearanceLadder(arrest.clearance(), system, c, z).draw(bottom);
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
        return exaggeration == 1
                ? "Drawn to true scale, heights and lengths alike"
                : "Lengths to scale; heights drawn " + (int) exaggeration + " times as large";
    }

    private double px(double along) {
        return x.at(QuantityKind.LENGTH.in(along, system));
    }

    private double pz(double elevation) {
        return z.at(QuantityKind.LENGTH.in(elevation, system));
    }

    /** Distance along the line of a point of a span. */
    /** Distance of a load along the line; a load at a support is at the distance of the support. */
    private double along(LoadPosition load) {
        return load.span() > 0
                ? along(load.span(), load.point())
                : line.along(Place.atSupport(load.restsOn().orElseThrow()));
    }

    private double along(int span, Point p) {
        Point a = line.supports().get(span - 1).position();
        Point b = line.supports().get(span).position();
        double run = line.run(span);
        return offset[span - 1] + ((p.x() - a.x()) * (b.x() - a.x()) + (p.y() - a.y()) * (b.y() - a.y())) / run;
    }

    private Spot spot(int span, Point p) {
        return new Spot(px(along(span, p)), pz(p.z()));
    }

    private void axis() {
        double right = px(offset[line.spans()]);
        for (BigDecimal t : z.ticks()) {
            double at = z.at(t.doubleValue());
            c.line(Pen.GRID, LEFT - 14, at, right, at);
            c.text(LEFT - 18, at + 4, "end", z.label(t));
        }
        c.upward(
                16,
                (bottom + pz(line.supports().get(0).position().z())) / 2,
                "elevation [" + QuantityKind.LENGTH.unit(system) + "]");
    }

    private void drawObstructions() {
        double end = offset[line.spans()];
        for (Obstruction o : obstructions) {
            double from = Math.max(0, o.from());
            double to = Math.min(end, o.to());
            double top = pz(o.elevation());
            if (to <= from || top >= bottom - 1) {
                continue;
            }
            Box box = new Box(px(from), top, px(to) - px(from), bottom - top);
            c.fill(box, OBSTRUCTION);
            c.line(Pen.INK, px(from), top, px(to), top);
            c.text(
                    (px(from) + px(to)) / 2,
                    bottom - top > TALL ? (top + bottom) / 2 : Math.min(bottom - 4, top + 16),
                    "middle",
                    SvgCanvas.cut("obstruction " + number(o.elevation()), Math.max(60, box.width() - 6)));
        }
    }

    private void drawWalkingLevel() {
        Worker w = arrest.clearanceWorker();
        double at = pz(w.walkingLevel());
        c.line(Pen.SIXTH, px(0), at, px(offset[line.spans()]), at);
        // The label stands at the end of the line that is farther from what hangs there.
        double end = offset[line.spans()];
        double nearest = along(arrest.span(), arrest.attachmentAtPeak());
        double left = nearest;
        double right = end - nearest;
        for (LoadPosition load : arrest.peak().loads()) {
            double place = along(load);
            left = Math.min(left, place);
            right = Math.min(right, end - place);
        }
        boolean atEnd = right > left;
        c.text(
                atEnd ? px(end) - 4 : px(0) + 4,
                at - 5,
                atEnd ? "end" : "start",
                "walking level " + number(w.walkingLevel()));
    }

    private String number(double elevation) {
        BigDecimal rounded = QuantityKind.LENGTH.rounded(elevation, system, 3).stripTrailingZeros();
        return QuantityKind.show(rounded) + " " + QuantityKind.LENGTH.unit(system);
    }

    private void drawLine(Pen pen, LineEquilibrium state) {
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

    private boolean isNamed(int support) {
        int span = arrest.span();
        return line.spans() < FEW_SUPPORTS
                || support == 0
                || support == line.spans()
                || support == span
                || support == span - 1;
    }

    private String supportLabel(int i) {
        return SvgCanvas.cut(line.supports().get(i).id(), 120) + ": "
                + QuantityKind.FORCE.number(arrest.supports().get(i).force(), system) + " "
                + QuantityKind.FORCE.unit(system);
    }

    /** Finds a row for the label of every support that is named, so that none runs into another. */
    private void placeLabels() {
        List<Double> free = new ArrayList<>();
        for (int i = 0; i <= line.spans(); i++) {
            if (!isNamed(i)) {
                continue;
            }
            double width = SvgCanvas.width(supportLabel(i));
            labelLeft[i] = Math.min(Math.max(px(offset[i]) - width / 2, 8), ClearanceLadder.LEFT - 24 - width);
            int row = 0;
            while (row < free.size() && free.get(row) > labelLeft[i]) {
                row++;
            }
            if (row == free.size()) {
                free.add(0.0);
            }
            free.set(row, labelLeft[i] + width + 12);
            labelRow[i] = row;
        }
        labelRows = free.size();
    }

    private void drawSupports() {
        for (int i = 0; i <= line.spans(); i++) {
            Support s = line.supports().get(i);
            double sx = px(offset[i]);
            double sz = pz(s.position().z());
            if (isNamed(i)) {
                double y = 46 + 16.0 * (labelRows - 1 - labelRow[i]) + 6;
                c.line(Pen.THIN, sx, y + 5, sx, sz - 7);
                c.text(labelLeft[i], y, "start", supportLabel(i));
            }
            if (s.isEnd()) {
                c.square(Pen.INK, new Spot(sx, sz), HALF_ANCHOR);
            } else {
                c.ring(Pen.INK, new Spot(sx, sz), RING);
            }
        }
    }

    private void drawHanging() {
        int n = arrest.fall().hanging().size();
        for (int i = 0; i < n; i++) {
            LoadPosition load = arrest.peak().loads().get(i);
            double lx = px(along(load));
            double lz = pz(load.point().z());
            c.arrow(Pen.FORCE, lx, lz, lx, lz + 44);
            String name = SvgCanvas.cut(arrest.fall().hanging().get(i).worker().id(), 90);
            c.text(lx + 7, lz + 18, "start", name + " hangs");
        }
    }

    private void drawStanding() {
        Worker w = arrest.clearanceWorker();
        double sx = px(along(arrest.span(), arrest.attachmentBefore()));
        double beside = sx - 16;
        figure(Pen.GHOST, beside, pz(w.harnessElevation()), pz(w.walkingLevel()));
        c.line(Pen.GHOST, sx, pz(arrest.attachmentBefore().z()), beside, pz(w.harnessElevation()));
    }

    private void drawFallen() {
        List<ClearanceRow> rows = arrest.clearance().rows();
        double fx = px(along(arrest.span(), arrest.attachmentAtPeak()));
        double taut = pz(rows.get(2).elevation());
        double torn = pz(rows.get(3).elevation());
        double harness = pz(rows.get(4).elevation());
        double feet = pz(rows.get(5).elevation());
        double start = pz(arrest.attachmentAtPeak().z());
        c.dot(Pen.FIRST, new Spot(fx, start), 4);
        c.line(Pen.INK, fx, start, fx, taut);
        if (torn - taut > 1) {
            List<Spot> zigzag = new ArrayList<>();
            int n = Math.max(2, (int) Math.round((torn - taut) / 6));
            for (int i = 0; i <= n; i++) {
                double side = i == 0 || i == n ? 0 : i % 2 == 0 ? 4 : -4;
                zigzag.add(new Spot(fx + side, taut + (torn - taut) * i / n));
            }
            c.polyline(Pen.INK, zigzag);
        }
        c.line(Pen.INK, fx, torn, fx, harness);
        figure(Pen.INK, fx, harness, feet);
    }

    /** From the attachment and the feet over to the clearance account; under all letters. */
    private void drawLeaders() {
        double fx = px(along(arrest.span(), arrest.attachmentAtPeak())) + 8;
        double feet = pz(arrest.clearance().rows().get(5).elevation());
        double start = pz(arrest.attachmentAtPeak().z());
        c.line(Pen.GRID, fx, feet, ClearanceLadder.LEFT, feet);
        c.line(Pen.GRID, fx, start, ClearanceLadder.LEFT, start);
    }

    /** A worker from the harness attachment down to the feet. */
    private void figure(Pen pen, double fx, double harness, double feet) {
        double size = feet - harness;
        double head = Math.min(6, Math.max(3, size * 0.12));
        c.ring(pen, new Spot(fx, harness - head * 1.4), head);
        double hip = harness + 0.45 * size;
        c.line(pen, fx, harness, fx, hip);
        c.line(pen, fx, hip, fx - head, feet);
        c.line(pen, fx, hip, fx + head, feet);
        double hand = harness + 0.32 * size;
        c.line(pen, fx, harness + 2, fx - head * 1.5, hand);
        c.line(pen, fx, harness + 2, fx + head * 1.5, hand);
    }

    private void drawFoot() {
        double y = bottom + 30;
        double end = px(offset[line.spans()]);
        BigDecimal bar = AxisScale.step(x.high() - x.low(), SCALE_BARS);
        double size = x.at(bar.doubleValue()) - x.at(0);
        c.line(Pen.INK, LEFT, y, LEFT + size, y);
        c.line(Pen.INK, LEFT, y - 4, LEFT, y + 4);
        c.line(Pen.INK, LEFT + size, y - 4, LEFT + size, y + 4);
        c.text(
                LEFT + size + 8,
                y + 4,
                "start",
                bar.stripTrailingZeros().toPlainString() + " " + QuantityKind.LENGTH.unit(system) + " along the line");
        double key = Math.max(LEFT + size + 170, Math.min(end - 150, LEFT + 300));
        c.line(Pen.GHOST, key, y, key + 34, y);
        c.text(key + 40, y + 4, "start", "before the fall");
        c.line(Pen.FIRST, key + 150, y, key + 184, y);
        c.text(key + 190, y + 4, "start", "at the lowest point");
        c.text(LEFT, y + 26, "start", scaleNote() + ". Forces at the supports are those at the lowest point.");
    }
}
