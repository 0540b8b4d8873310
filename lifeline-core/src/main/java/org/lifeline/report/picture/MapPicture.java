package org.lifeline.report.picture;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.document.InertText;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.picture.AxisScale.Range;
import org.lifeline.report.picture.SvgCanvas.Box;
import org.lifeline.report.picture.SvgCanvas.Hatch;

/**
 * Draws a map over two variables: every cell belongs to a class, for example feasible or limited by a named criterion.
 * Classes differ by hatch as well as by colour, and each is named where it is widest.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MapPicture {
    private static final Pen[] PENS = {Pen.THIRD, Pen.SECOND, Pen.FIRST, Pen.FOURTH, Pen.FIFTH, Pen.INK, Pen.LIMIT};
    private static final double LEFT = 84;
    private static final double TOP = 44;
    private static final double WIDE = 520;
    private static final double HIGH = 380;
    private static final double KEY = 250;
    private static final int X_TICKS = 8;
    private static final int Y_TICKS = 6;

    private final UnitSystem system;

    private MapPicture(UnitSystem system) {
        this.system = system;
    }

    /**
     * A grid of classes.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Grid {
        private final double[] x;
        private final double[] y;
        private final int[][] classes;
        private final List<String> names;

        private Grid(double[] x, double[] y, int[][] classes, List<String> names) {
            this.x = x;
            this.y = y;
            this.classes = classes;
            this.names = names;
        }

        /**
         * A grid.
         *
         * @param x values of the first variable in SI [unit of the axis], rising
         * @param y values of the second variable in SI [unit of the axis], rising
         * @param classes class of each cell, {@code classes[i][j]} at x[j] and y[i], from 0; negative where there is none
         * @param names names of the classes, at most seven; the first is the one that is sought
         * @return the grid
         * @throws IllegalArgumentException if the sizes do not agree
         */
        public static Grid of(double[] x, double[] y, int[][] classes, List<String> names) {
            boolean fits = x.length >= 2 && y.length >= 2 && classes.length == y.length && names.size() <= PENS.length;
            int[][] copy = new int[classes.length][];
            for (int i = 0; i < classes.length; i++) {
                fits &= classes[i].length == x.length;
                copy[i] = classes[i].clone();
                for (int k : copy[i]) {
                    fits &= k < names.size();
                }
            }
            if (!fits) {
                throw new IllegalArgumentException("grid of " + x.length + " by " + y.length + " cells with "
                        + classes.length + " rows and " + names.size() + " classes");
            }
            return new Grid(x.clone(), y.clone(), copy, List.copyOf(names));
        }

        /** Neighbours of one class in a row, as one run each. */
        private List<Run> runs() {
            List<Run> list = new ArrayList<>();
            for (int i = 0; i < y.length; i++) {
                int from = 0;
                for (int j = 1; j <= x.length; j++) {
                    if (j == x.length || classes[i][j] != classes[i][from]) {
                        if (classes[i][from] >= 0) {
                            list.add(new Run(i, from, j, classes[i][from]));
                        }
                        from = j;
                    }
                }
            }
            return list;
        }
    }

    /**
     * Neighbouring cells of one class.
     *
     * @param row their row
     * @param from the first column
     * @param to the column after the last
     * @param of their class
     */
    private record Run(int row, int from, int to, int of) {}

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
    public Picture draw(String title, String description, ChartAxis horizontal, ChartAxis vertical, Grid grid) {
        SvgCanvas c = new SvgCanvas(LEFT + WIDE + KEY, TOP + HIGH + 56);
        String prefix = "m" + Integer.toHexString((title + grid.names).hashCode()) + "-";
        c.bold(12, 22, "start", SvgCanvas.cut(title, LEFT + WIDE + KEY - 40));
        double[] xs = converted(grid.x, horizontal.measure());
        double[] ys = converted(grid.y, vertical.measure());
        double[] xe = edges(xs);
        double[] ye = edges(ys);
        AxisScale x = new AxisScale(new Range(xe[0], xe[xe.length - 1]), new Range(LEFT, LEFT + WIDE), X_TICKS);
        AxisScale y = new AxisScale(new Range(ye[0], ye[ye.length - 1]), new Range(TOP + HIGH, TOP), Y_TICKS);
        for (int k = 0; k < grid.names.size(); k++) {
            c.hatch(new Hatch(prefix, k), PENS[k]);
        }
        for (Run run : grid.runs()) {
            double left = x.at(xe[run.from()]);
            double top = y.at(ye[run.row() + 1]);
            c.fill(
                    new Box(left, top, x.at(xe[run.to()]) - left, y.at(ye[run.row()]) - top),
                    new Hatch(prefix, run.of()));
        }
        borders(c, grid, x, y, xe, ye);
        axes(c, x, y, horizontal, vertical);
        names(c, grid, x, y, xs, ys);
        double row = TOP + 14;
        for (int k = 0; k < grid.names.size(); k++) {
            c.box(PENS[k], new Box(LEFT + WIDE + 18, row - 11, 22, 14), new Hatch(prefix, k));
            c.text(LEFT + WIDE + 47, row, "start", SvgCanvas.cut(grid.names.get(k), KEY - 54));
            row += 24;
        }
        return new Picture(title, description, c.finish(title, description), data(title, horizontal, vertical, grid));
    }

    /** The classes on the grid of the picture: a row for each value of the second variable, the largest on top. */
    private ReportBlock.Table data(String title, ChartAxis horizontal, ChartAxis vertical, Grid grid) {
        TableBuilder t = new TableBuilder(title).number(label(vertical) + " \\ " + label(horizontal));
        for (double x : grid.x) {
            t.text(horizontal.measure().number(x, system));
        }
        for (int i = grid.y.length - 1; i >= 0; i--) {
            List<String> cells = new ArrayList<>(List.of(vertical.measure().number(grid.y[i], system)));
            for (int k : grid.classes[i]) {
                cells.add(k < 0 ? "–" : InertText.plain(grid.names.get(k)));
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
    private static void borders(SvgCanvas c, Grid g, AxisScale x, AxisScale y, double[] xe, double[] ye) {
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
        c.upward(18, TOP + HIGH / 2, SvgCanvas.cut(label(vertical), HIGH));
    }

    private String label(ChartAxis axis) {
        String unit = axis.measure().unit(system);
        return unit.isEmpty() ? axis.label() : axis.label() + " [" + unit + "]";
    }

    /** Each class is named in its widest run of cells, if the name fits there. */
    private static void names(SvgCanvas c, Grid g, AxisScale x, AxisScale y, double[] xs, double[] ys) {
        List<Spot> taken = new ArrayList<>();
        for (int k = 0; k < g.names.size(); k++) {
            double widest = 0;
            Spot at = new Spot(0, 0);
            for (int i = 0; i < ys.length; i++) {
                double row = y.at(ys[i]) + 4;
                if (taken.stream().anyMatch(t -> Math.abs(t.y() - row) < 15)) {
                    continue;
                }
                for (int j = 0; j < xs.length; j++) {
                    int end = j;
                    while (end + 1 < xs.length && g.classes[i][end + 1] == k && g.classes[i][j] == k) {
                        end++;
                    }
                    // Of runs of equal width the one nearest to the middle of the map.
                    double size = g.classes[i][j] == k
                            ? x.at(xs[end]) - x.at(xs[j]) - 0.05 * Math.abs(i - ys.length / 2.0)
                            : 0;
                    if (size > widest) {
                        widest = size;
                        at = new Spot(0.5 * (x.at(xs[end]) + x.at(xs[j])), row);
                    }
                    j = end;
                }
            }
            if (widest > SvgCanvas.width(g.names.get(k)) + 8) {
                c.bold(at.x(), at.y(), "middle", g.names.get(k));
                taken.add(at);
            }
        }
    }
}
