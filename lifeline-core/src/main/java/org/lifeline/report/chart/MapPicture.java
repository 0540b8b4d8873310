package org.lifeline.report.chart;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Hatch;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.SvgCanvas.Box;
import org.lifeline.internal.svg.SvgElement;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws a map over two variables: every cell belongs to a class, for example feasible or limited by a named criterion.
 * Classes differ by hatch as well as by colour, and every region carries the name of its class, or its number in the key
 * where there is no room. Lines of equal demand over capacity and the design itself are drawn where they are given.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MapPicture {
    static final List<Pen> PENS = List.of(Pen.THIRD, Pen.SECOND, Pen.FIRST, Pen.FOURTH, Pen.FIFTH, Pen.INK, Pen.LIMIT);
    private static final double LEFT = 84;
    private static final double TOP = 44;
    private static final double WIDE = 520;
    private static final double HIGH = 380;
    private static final double KEY = 250;
    private static final double ROW = 24;
    private static final double LETTER = 12;
    private static final double MARK = 5;
    private static final double DOT = 2;
    private static final String DESIGN = "design";
    /** Values of demand over capacity whose lines are drawn [-]. */
    private static final List<Double> LEVELS = List.of(0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.25, 1.5, 2.0, 3.0, 5.0);

    private static final int X_TICKS = 8;
    private static final int Y_TICKS = 6;

    private final UnitSystem system;

    private MapPicture(UnitSystem system) {
        this.system = system;
    }

    /**
     * Draws in the leading system of a choice of units.
     *
     * @param choice the units
     * @return the drawing tool
     */
    public static MapPicture in(UnitChoice choice) {
        return new MapPicture(choice.leading());
    }

    /**
     * Draws a map.
     *
     * @param title what it shows
     * @param description what can be read from it
     * @param horizontal the first variable
     * @param vertical the second variable
     * @param grid the classes
     * @return the picture
     */
    public Picture draw(String title, String description, ChartAxis horizontal, ChartAxis vertical, MapGrid grid) {
        SvgCanvas c = new SvgCanvas(LEFT + WIDE + KEY, TOP + HIGH + 56);
        String prefix = "m" + Integer.toHexString((title + grid.names).hashCode()) + "-";
        c.heading(title, LEFT + WIDE + KEY - 24);
        double[] xs = converted(grid.x, horizontal.measure());
        double[] ys = converted(grid.y, vertical.measure());
        double[] xe = edges(xs);
        double[] ye = edges(ys);
        AxisScale x = new AxisScale(new Range(xe[0], xe[xe.length - 1]), new Range(LEFT, LEFT + WIDE), X_TICKS);
        AxisScale y = new AxisScale(new Range(ye[0], ye[ye.length - 1]), new Range(TOP + HIGH, TOP), Y_TICKS);
        for (int k = 0; k < grid.names.size(); k++) {
            c.hatch(new Hatch(prefix, k), PENS.get(k));
        }
        for (MapGrid.Run run : grid.runs()) {
            double left = x.at(xe[run.from()]);
            double top = y.at(ye[run.row() + 1]);
            c.fill(
                    new Box(left, top, x.at(xe[run.to()]) - left, y.at(ye[run.row()]) - top),
                    new Hatch(prefix, run.of()));
        }
        borders(c, grid, x, y, xe, ye);
        axes(c, x, y, horizontal, vertical);
        List<Box> taken = new ArrayList<>();
        design(c, grid, x, y, horizontal, vertical, taken);
        names(c, grid, x, y, xe, ye, taken);
        contours(c, grid, x, y, xs, ys, taken);
        key(c, grid, prefix);
        return new Picture(title, description, c.finish(title, description), data(title, horizontal, vertical, grid));
    }

    /** The classes, and demand over capacity, on the grid of the picture: a row for each value of the second variable, the largest on top. */
    private ReportBlock.Table data(String title, ChartAxis horizontal, ChartAxis vertical, MapGrid grid) {
        TableBuilder t = new TableBuilder(title).number(label(vertical) + " \\ " + label(horizontal));
        for (double x : grid.x) {
            t.text(horizontal.measure().number(x, system));
        }
        boolean ratios = grid.ratios.length > 0;
        for (int i = grid.y.length - 1; i >= 0; i--) {
            List<String> cells = new ArrayList<>(List.of(vertical.measure().number(grid.y[i], system)));
            for (int j = 0; j < grid.x.length; j++) {
                int k = grid.classes[i][j];
                String ratio = ratios && Double.isFinite(grid.ratios[i][j])
                        ? " " + QuantityKind.RATIO.number(grid.ratios[i][j], system)
                        : "";
                cells.add(k < 0 ? "–" : InertText.plain(grid.names.get(k)) + ratio);
            }
            t.row(cells);
        }
        return t.build();
    }

    private double[] converted(double[] si, QuantityKind measure) {
        double[] v = new double[si.length];
        for (int i = 0; i < v.length; i++) {
            v[i] = measure.in(si[i], system);
        }
        return v;
    }

    /** Edges of cells: half way between their middles. */
    private static double[] edges(double[] v) {
        double[] e = new double[v.length + 1];
        for (int i = 1; i < v.length; i++) {
            e[i] = 0.5 * (v[i - 1] + v[i]);
        }
        e[0] = v[0] - (e[1] - v[0]);
        e[v.length] = v[v.length - 1] + (v[v.length - 1] - e[v.length - 1]);
        return e;
    }

    /** Lines between cells of different class. */
    private static void borders(SvgCanvas c, MapGrid g, AxisScale x, AxisScale y, double[] xe, double[] ye) {
        for (int i = 0; i < g.y.length; i++) {
            for (int j = 0; j < g.x.length; j++) {
                if (j > 0 && g.classes[i][j] != g.classes[i][j - 1]) {
                    c.line(Pen.INK, x.at(xe[j]), y.at(ye[i]), x.at(xe[j]), y.at(ye[i + 1]));
                }
                if (i > 0 && g.classes[i][j] != g.classes[i - 1][j]) {
                    c.line(Pen.INK, x.at(xe[j]), y.at(ye[i]), x.at(xe[j + 1]), y.at(ye[i]));
                }
            }
        }
    }

    private void axes(SvgCanvas c, AxisScale x, AxisScale y, ChartAxis horizontal, ChartAxis vertical) {
        c.line(Pen.INK, LEFT, TOP, LEFT, TOP + HIGH);
        c.line(Pen.INK, LEFT, TOP + HIGH, LEFT + WIDE, TOP + HIGH);
        for (BigDecimal t : x.ticks()) {
            double at = x.at(t.doubleValue());
            c.line(Pen.THIN, at, TOP + HIGH, at, TOP + HIGH + 4);
            c.text(at, TOP + HIGH + 18, "middle", x.label(t));
        }
        for (BigDecimal t : y.ticks()) {
            double at = y.at(t.doubleValue());
            c.line(Pen.THIN, LEFT - 4, at, LEFT, at);
            c.text(LEFT - 7, at + 4, "end", y.label(t));
        }
        c.text(LEFT + WIDE / 2, TOP + HIGH + 42, "middle", label(horizontal));
        c.upward(18, TOP + HIGH / 2, TextWidth.cut(label(vertical), HIGH));
    }

    private String label(ChartAxis axis) {
        String unit = axis.measure().unit(system);
        return unit.isEmpty() ? axis.label() : axis.label() + " [" + unit + "]";
    }

    private static void key(SvgCanvas c, MapGrid grid, String prefix) {
        double left = LEFT + WIDE + 18;
        double row = TOP + 14;
        for (int k = 0; k < grid.names.size(); k++) {
            c.box(PENS.get(k), new Box(left, row - 11, 22, 14), new Hatch(prefix, k));
            c.text(left + 29, row, "start", TextWidth.cut((k + 1) + " " + grid.names.get(k), KEY - 54));
            row += ROW;
        }
        if (grid.ratios.length > 0) {
            c.line(Pen.GHOST, left, row - 4, left + 22, row - 4);
            c.text(left + 29, row, "start", "demand over capacity");
            c.line(Pen.LIMIT, left, row + ROW - 4, left + 22, row + ROW - 4);
            c.text(left + 29, row + ROW, "start", "demand over capacity 1");
            row += 2 * ROW;
        }
        if (grid.hasDesign()) {
            c.ring(Pen.INK, new Spot(left + 11, row - 4), MARK);
            c.dot(Pen.INK, new Spot(left + 11, row - 4), DOT);
            c.text(left + 29, row, "start", "design as stated");
        }
    }

    /** The design itself, if it lies on the map. */
    private void design(
            SvgCanvas c,
            MapGrid g,
            AxisScale x,
            AxisScale y,
            ChartAxis horizontal,
            ChartAxis vertical,
            List<Box> taken) {
        if (!g.hasDesign()) {
            return;
        }
        Spot at = new Spot(
                x.at(horizontal.measure().in(g.designX, system)),
                y.at(vertical.measure().in(g.designY, system)));
        if (!(at.x() >= LEFT && at.x() <= LEFT + WIDE && at.y() >= TOP && at.y() <= TOP + HIGH)) {
            return;
        }
        c.ring(Pen.INK, at, MARK);
        c.dot(Pen.INK, at, DOT);
        double wide = TextWidth.of(DESIGN);
        boolean leftward = at.x() + 10 + wide > LEFT + WIDE;
        double baseline = Math.min(TOP + HIGH - 4, Math.max(TOP + LETTER, at.y() + 4));
        c.bold(leftward ? at.x() - 10 : at.x() + 10, baseline, leftward ? "end" : "start", DESIGN);
        taken.add(new Box(
                leftward ? at.x() - 10 - wide : at.x() - MARK, baseline - LETTER, wide + 10 + MARK, LETTER + 6));
    }

    /** Every region carries the name of its class where that fits, else the number of the class in the key. */
    private static void names(
            SvgCanvas c, MapGrid g, AxisScale x, AxisScale y, double[] xe, double[] ye, List<Box> taken) {
        for (List<MapGrid.Run> region : g.regions()) {
            String name = g.names.get(region.get(0).of());
            String number = Integer.toString(region.get(0).of() + 1);
            if (!place(c, region, name, x, y, xe, ye, taken)) {
                place(c, region, number, x, y, xe, ye, taken);
            }
        }
    }

    private static boolean place(
            SvgCanvas c,
            List<MapGrid.Run> region,
            String text,
            AxisScale x,
            AxisScale y,
            double[] xe,
            double[] ye,
            List<Box> taken) {
        double wide = TextWidth.of(text) + 6;
        double best = 0;
        Spot at = new Spot(0, 0);
        double middle = region.stream().mapToDouble(MapGrid.Run::row).average().orElse(0);
        for (MapGrid.Run run : region) {
            double left = x.at(xe[run.from()]);
            double right = x.at(xe[run.to()]);
            Spot here = new Spot(0.5 * (left + right), 0.5 * (y.at(ye[run.row()]) + y.at(ye[run.row() + 1])) + 4);
            Box box = new Box(here.x() - wide / 2, here.y() - LETTER, wide, LETTER + 4);
            // Of runs of equal width the one nearest to the middle of the region.
            double size = right - left - 0.05 * Math.abs(run.row() - middle);
            if (size >= wide && size > best && taken.stream().noneMatch(b -> overlap(b, box))) {
                best = size;
                at = here;
            }
        }
        if (best > 0) {
            c.bold(at.x(), at.y(), "middle", text);
            taken.add(new Box(at.x() - wide / 2, at.y() - LETTER, wide, LETTER + 4));
        }
        return best > 0;
    }

    private static boolean overlap(Box a, Box b) {
        return a.left() < b.left() + b.width()
                && b.left() < a.left() + a.width()
                && a.top() < b.top() + b.height()
                && b.top() < a.top() + a.height();
    }

    /** Lines of equal demand over capacity, each with its number where nothing else stands. */
    private static void contours(
            SvgCanvas c, MapGrid g, AxisScale x, AxisScale y, double[] xs, double[] ys, List<Box> taken) {
        for (double level : LEVELS) {
            List<ContourLines.Segment> all = new ContourLines(xs, ys, g.ratios).at(level);
            String text = SvgElement.n(level);
            double wide = TextWidth.of(text) + 6;
            boolean labelled = false;
            for (ContourLines.Segment s : all) {
                Spot from = new Spot(x.at(s.from().x()), y.at(s.from().y()));
                Spot to = new Spot(x.at(s.to().x()), y.at(s.to().y()));
                c.line(level == 1 ? Pen.LIMIT : Pen.GHOST, from.x(), from.y(), to.x(), to.y());
            }
            for (int i = 0; i < all.size() && !labelled; i++) {
                // From the middle of the list outward.
                int k = (all.size() / 2 + (i % 2 == 0 ? i / 2 : all.size() - 1 - i / 2)) % all.size();
                Spot at = new Spot(
                        x.at(0.5 * (all.get(k).from().x() + all.get(k).to().x())),
                        y.at(0.5 * (all.get(k).from().y() + all.get(k).to().y())) + 4);
                Box box = new Box(at.x() - wide / 2, at.y() - LETTER, wide, LETTER + 4);
                boolean inside = box.left() >= LEFT
                        && box.left() + wide <= LEFT + WIDE
                        && box.top() >= TOP
                        && at.y() + 4 <= TOP + HIGH;
                if (inside && taken.stream().noneMatch(b -> overlap(b, box))) {
                    c.text(at.x(), at.y(), "middle", text);
                    taken.add(box);
                    labelled = true;
                }
            }
        }
    }
}
