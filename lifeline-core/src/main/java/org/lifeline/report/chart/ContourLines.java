package org.lifeline.report.chart;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.internal.svg.Spot;

/**
 * Lines of equal value over a grid of values, straight within each triangle between the middle of four neighbours and two
 * of them, where values are interpolated linearly: lines have no gaps and never cross.
 */
final class ContourLines {
    /**
     * A piece of a line, in the units of the axes.
     *
     * @param from one end
     * @param to the other end
     */
    record Segment(Spot from, Spot to) {}

    /** A point of the grid with its value. */
    private record Node(Spot at, double value) {}

    private final double[] x;
    private final double[] y;
    private final double[][] values;

    ContourLines(double[] x, double[] y, double[][] values) {
        this.x = x;
        this.y = y;
        this.values = values;
    }

    /** The pieces of the line of a level; none beside a value that is not finite. */
    List<Segment> at(double level) {
        List<Segment> list = new ArrayList<>();
        for (int i = 0; i + 1 < values.length; i++) {
            for (int j = 0; j + 1 < x.length; j++) {
                Node[] corner = {node(i, j), node(i, j + 1), node(i + 1, j + 1), node(i + 1, j)};
                double mean = 0;
                for (Node n : corner) {
                    mean += n.value() / corner.length;
                }
                if (!Double.isFinite(mean)) {
                    continue;
                }
                Node middle = new Node(new Spot(0.5 * (x[j] + x[j + 1]), 0.5 * (y[i] + y[i + 1])), mean);
                for (int k = 0; k < corner.length; k++) {
                    triangle(level, List.of(corner[k], corner[(k + 1) % corner.length], middle), list);
                }
            }
        }
        return list;
    }

    private Node node(int i, int j) {
        return new Node(new Spot(x[j], y[i]), values[i][j]);
    }

    private static void triangle(double level, List<Node> corners, List<Segment> out) {
        List<Spot> cuts = new ArrayList<>();
        for (int k = 0; k < corners.size(); k++) {
            Node a = corners.get(k);
            Node b = corners.get((k + 1) % corners.size());
            if (a.value() < level != b.value() < level) {
                double share = (level - a.value()) / (b.value() - a.value());
                cuts.add(new Spot(
                        a.at().x() + share * (b.at().x() - a.at().x()),
                        a.at().y() + share * (b.at().y() - a.at().y())));
            }
        }
        if (cuts.size() == 2) {
            out.add(new Segment(cuts.get(0), cuts.get(1)));
        }
    }
}
