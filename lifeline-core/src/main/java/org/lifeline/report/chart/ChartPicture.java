package org.lifeline.report.chart;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Hatch;
import org.lifeline.internal.svg.LabelSpacing;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws lines over an axis: an envelope along the line, a force against descent, histories in time. Each line has its own
 * dashes as well as its own colour and carries its name at its end.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ChartPicture {
    private static final Pen[] PENS = {Pen.FIRST, Pen.SECOND, Pen.THIRD, Pen.FOURTH, Pen.FIFTH, Pen.SIXTH};
    private static final double WIDTH = 860;
    private static final double LEFT = 76;
    private static final double RIGHT = 200;
    private static final double TOP = 44;
    private static final double FIELD = 150;
    private static final double GAP = 34;
    private static final double BOTTOM = 52;
    private static final int X_TICKS = 9;
    private static final int Y_TICKS = 5;
    private static final double LABEL_GAP = 16;
    /** Radius of the ring about a point that stands by itself [user units]. */
    private static final double RING = 3.2;

    /** An axis of amounts starts at nothing if the least of them is below this share of the largest [-]. */
    private static final double FROM_ZERO = 0.6;

    private final UnitSystem system;
    /** One of each measure in SI, in the unit of the axes. */
    private final Map<QuantityKind, Double> one;

    private ChartPicture(UnitSystem system) {
        this.system = system;
        this.one = Arrays.stream(QuantityKind.values())
                .collect(Collectors.toUnmodifiableMap(m -> m, m -> m.in(1, system)));
    }

    /**
     * Draws in the leading system of a choice of units.
     *
     * @param choice the units
     * @return the drawing tool
     */
    public static ChartPicture in(UnitChoice choice) {
        return new ChartPicture(choice.leading());
    }

    /**
     * Draws a chart.
     *
     * @param title what it shows
     * @param description what can be read from it
     * @param horizontal the horizontal axis
     * @param panels the fields, from top to bottom, at least one
     * @return the picture
     */
    public Picture draw(String title, String description, ChartAxis horizontal, List<ChartPanel> panels) {
        double height = TOP + panels.size() * FIELD + (panels.size() - 1) * GAP + BOTTOM;
        SvgCanvas c = new SvgCanvas(WIDTH, height);
        c.heading(title, WIDTH - 24);
        AxisScale x = AxisScale.rounded(rangeX(horizontal, panels), new Range(LEFT, WIDTH - RIGHT), X_TICKS);
        for (int i = 0; i < panels.size(); i++) {
            double top = TOP + i * (FIELD + GAP);
            panel(c, panels.get(i), horizontal, x, top);
            boolean last = i == panels.size() - 1;
            for (BigDecimal tick : x.ticks()) {
                double at = x.at(tick.doubleValue());
                c.line(Pen.THIN, at, top + FIELD, at, top + FIELD + 4);
                if (last) {
                    c.text(at, top + FIELD + 18, "middle", x.label(tick));
                }
            }
        }
        c.text((LEFT + WIDTH - RIGHT) / 2, height - 12, "middle", label(horizontal));
        return new Picture(
                title, description, c.finish(title, description), new ChartTable(system, horizontal).of(title, panels));
    }

    private String label(ChartAxis axis) {
        String unit = axis.measure().unit(system);
        return unit.isEmpty() ? axis.label() : axis.label() + " [" + unit + "]";
    }

    /** Conversion for drawing: fast, since histories have many points; a temperature has an origin of its own. */
    private double in(ChartAxis axis, double value) {
        QuantityKind m = axis.measure();
        return m == QuantityKind.TEMPERATURE ? m.in(value, system) : one.getOrDefault(m, 1.0) * value;
    }

    private Range rangeX(ChartAxis axis, List<ChartPanel> panels) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (ChartPanel p : panels) {
            for (ChartSeries s : p.series()) {
                for (int i = 0; i < s.size(); i++) {
                    low = Math.min(low, s.x(i));
                    high = Math.max(high, s.x(i));
                }
            }
        }
        if (!(low <= high)) {
            return new Range(0, 1);
        }
        return new Range(in(axis, low), in(axis, high));
    }

    private Range rangeY(ChartPanel p) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (ChartSeries s : p.series()) {
            for (int i = 0; i < s.size(); i++) {
                if (Double.isFinite(s.y(i))) {
                    low = Math.min(low, s.y(i));
                    high = Math.max(high, s.y(i));
                }
            }
        }
        for (ReferenceLine m : p.marks()) {
            if (!m.vertical()) {
                low = Math.min(low, m.value());
                high = Math.max(high, m.value());
            }
        }
        if (!(low <= high)) {
            return new Range(0, 1);
        }
        QuantityKind measure = p.axis().measure();
        double a = in(p.axis(), low);
        double b = in(p.axis(), high);
        // An axis of amounts starts at nothing unless that would squeeze the lines together.
        boolean fromZero = a > 0 && a < FROM_ZERO * b && measure != QuantityKind.TEMPERATURE;
        return new Range(fromZero ? 0 : a, b);
    }

    private void panel(SvgCanvas c, ChartPanel p, ChartAxis horizontal, AxisScale x, double top) {
        AxisScale y = AxisScale.rounded(rangeY(p), new Range(top + FIELD, top), Y_TICKS);
        double right = WIDTH - RIGHT;
        for (BigDecimal tick : y.ticks()) {
            double at = y.at(tick.doubleValue());
            c.line(tick.signum() == 0 ? Pen.THIN : Pen.GRID, LEFT, at, right, at);
            c.text(LEFT - 7, at + 4, "end", y.label(tick));
        }
        c.line(Pen.INK, LEFT, top, LEFT, top + FIELD);
        c.line(Pen.INK, LEFT, top + FIELD, right, top + FIELD);
        c.upward(18, top + FIELD / 2, TextWidth.cut(label(p.axis()), FIELD + 20));
        verticals(c, p, x, top, horizontal);
        for (int i = 0; i < p.series().size(); i++) {
            ChartSeries series = p.series().get(i);
            Hatch hatch = new Hatch("a" + Integer.toHexString((series.name() + (int) top).hashCode()) + "-", i);
            if (series.isShaded()) {
                c.hatch(hatch, PENS[i]);
            }
            for (List<Spot> part : parts(series, x, y, horizontal, p.axis())) {
                if (series.isShaded()) {
                    double zero = Math.max(top, Math.min(top + FIELD, y.at(0)));
                    c.area(part, zero, hatch);
                }
                if (series.isDots()) {
                    for (Spot each : part) {
                        c.ring(PENS[i], each, RING);
                    }
                } else {
                    c.polyline(PENS[i], part);
                }
            }
        }
        labels(c, p, x, y, top, horizontal);
    }

    /** Places on the horizontal axis: labels above the field, and within it where they would run into each other. */
    private void verticals(SvgCanvas c, ChartPanel p, AxisScale x, double top, ChartAxis horizontal) {
        double right = WIDTH - RIGHT;
        double free = LEFT;
        double row = top + 13;
        for (ReferenceLine m : p.marks()) {
            double at = m.vertical() ? x.at(in(horizontal, m.value())) : Double.NaN;
            if (!(at >= LEFT - 0.5 && at <= right + 0.5)) {
                continue;
            }
            c.line(Pen.GHOST, at, top, at, top + FIELD);
            String label = TextWidth.cut(m.label(), 260);
            double width = TextWidth.of(label);
            double start = Math.min(at - width / 2, right - width);
            if (start >= free) {
                c.text(start, top - 6, "start", label);
                free = start + width + 8;
            } else {
                boolean leftward = at + width > right;
                c.text(leftward ? at - 4 : at + 4, row, leftward ? "end" : "start", label);
                row = row > top + 60 ? top + 13 : row + 15;
            }
        }
    }

    /** Points in the picture; where many fall on one column, the first, lowest, highest and last of them. */
    private List<List<Spot>> parts(ChartSeries s, AxisScale x, AxisScale y, ChartAxis ax, ChartAxis ay) {
        List<List<Spot>> parts = new ArrayList<>();
        List<Spot> now = new ArrayList<>();
        List<Spot> column = new ArrayList<>();
        for (int i = 0; i < s.size(); i++) {
            if (!Double.isFinite(s.y(i))) {
                flush(column, now);
                if (!now.isEmpty()) {
                    parts.add(now);
                    now = new ArrayList<>();
                }
                continue;
            }
            Spot at = new Spot(x.at(in(ax, s.x(i))), y.at(in(ay, s.y(i))));
            if (!column.isEmpty()
                    && Math.floor(2 * at.x()) != Math.floor(2 * column.get(0).x())) {
                flush(column, now);
            }
            column.add(at);
        }
        flush(column, now);
        if (!now.isEmpty()) {
            parts.add(now);
        }
        return parts;
    }

    private static void flush(List<Spot> column, List<Spot> out) {
        if (column.size() <= 4) {
            out.addAll(column);
        } else {
            int low = 0;
            int high = 0;
            for (int i = 1; i < column.size(); i++) {
                low = column.get(i).y() < column.get(low).y() ? i : low;
                high = column.get(i).y() > column.get(high).y() ? i : high;
            }
            out.add(column.get(0));
            out.add(column.get(Math.min(low, high)));
            out.add(column.get(Math.max(low, high)));
            out.add(column.get(column.size() - 1));
        }
        column.clear();
    }

    /** Names at the right-hand edge: of lines at their ends, of levels at their height. */
    private void labels(SvgCanvas c, ChartPanel p, AxisScale x, AxisScale y, double top, ChartAxis horizontal) {
        List<String> names = new ArrayList<>();
        List<Spot> ends = new ArrayList<>();
        List<Pen> pens = new ArrayList<>();
        for (int i = 0; i < p.series().size(); i++) {
            ChartSeries s = p.series().get(i);
            int last = s.size() - 1;
            while (last >= 0 && !Double.isFinite(s.y(last))) {
                last--;
            }
            if (last >= 0) {
                names.add(s.name());
                ends.add(new Spot(x.at(in(horizontal, s.x(last))), y.at(in(p.axis(), s.y(last)))));
                pens.add(PENS[i]);
            }
        }
        double right = WIDTH - RIGHT;
        for (ReferenceLine m : p.marks()) {
            if (!m.vertical()) {
                double at = y.at(in(p.axis(), m.value()));
                c.line(Pen.LIMIT, LEFT, at, right, at);
                names.add(m.label());
                ends.add(new Spot(right, at));
                pens.add(Pen.LIMIT);
            }
        }
        double[] places = new LabelSpacing(LABEL_GAP, new Range(top + 6, top + FIELD - 2))
                .spread(ends.stream().mapToDouble(Spot::y).toArray());
        for (int i = 0; i < names.size(); i++) {
            Spot end = ends.get(i);
            c.dot(pens.get(i), end, 2.6);
            c.line(Pen.THIN, end.x() + 4, end.y(), right + 14, places[i]);
            c.line(pens.get(i), right + 14, places[i], right + 36, places[i]);
            c.text(right + 41, places[i] + 4, "start", TextWidth.cut(names.get(i), RIGHT - 48));
        }
    }
}
