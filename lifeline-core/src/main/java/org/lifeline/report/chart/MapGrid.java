package org.lifeline.report.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * What a map over two variables shows: a class for every cell, and, where they are known, the ratio of demand to capacity
 * and where the design itself lies.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MapGrid {
    final double[] x;
    final double[] y;
    final int[][] classes;
    final List<String> names;
    /** Demand over capacity of each cell [-]; no rows where it is not known. */
    final double[][] ratios;

    final double designX;
    final double designY;

    private MapGrid(MapGrid other, double[][] ratios, double designX, double designY) {
        this.x = other.x;
        this.y = other.y;
        this.classes = other.classes;
        this.names = other.names;
        this.ratios = ratios;
        this.designX = designX;
        this.designY = designY;
    }

    private MapGrid(double[] x, double[] y, int[][] classes, List<String> names) {
        this.x = x;
        this.y = y;
        this.classes = classes;
        this.names = names;
        this.ratios = new double[0][];
        this.designX = Double.NaN;
        this.designY = Double.NaN;
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
    public static MapGrid of(double[] x, double[] y, int[][] classes, List<String> names) {
        boolean fits =
                x.length >= 2 && y.length >= 2 && classes.length == y.length && names.size() <= MapPicture.PENS.size();
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
        return new MapGrid(x.clone(), y.clone(), copy, List.copyOf(names));
    }

    /**
     * The same with the ratio of demand to capacity of each cell, of which lines are drawn.
     *
     * @param value ratio of each cell [-], {@code value[i][j]} at x[j] and y[i]; not finite where it is not known
     * @return the new grid
     * @throws IllegalArgumentException if there are not as many as cells
     */
    public MapGrid withRatios(double[][] value) {
        double[][] copy = new double[value.length][];
        boolean fits = value.length == y.length;
        for (int i = 0; i < value.length; i++) {
            fits &= value[i].length == x.length;
            copy[i] = value[i].clone();
        }
        if (!fits) {
            throw new IllegalArgumentException(value.length + " rows of ratios: must be one for each of the " + y.length
                    + " by " + x.length + " cells");
        }
        return new MapGrid(this, copy, designX, designY);
    }

    /**
     * The same with the value of the first variable that the design has.
     *
     * @param value value of the first variable in SI [unit of the axis]
     * @return the new grid
     */
    public MapGrid withDesignX(double value) {
        return new MapGrid(this, ratios, value, designY);
    }

    /**
     * The same with the value of the second variable that the design has. The design is marked where both are given.
     *
     * @param value value of the second variable in SI [unit of the axis]
     * @return the new grid
     */
    public MapGrid withDesignY(double value) {
        return new MapGrid(this, ratios, designX, value);
    }

    boolean hasDesign() {
        return Double.isFinite(designX) && Double.isFinite(designY);
    }

    /**
     * Neighbouring cells of one class.
     *
     * @param row their row
     * @param from the first column
     * @param to the column after the last
     * @param of their class
     */
    record Run(int row, int from, int to, int of) {
        boolean touches(Run other) {
            return of == other.of && Math.abs(row - other.row) == 1 && from < other.to && other.from < to;
        }
    }

    /** Neighbours of one class in a row, as one run each. */
    List<Run> runs() {
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

    /** Connected cells of one class, the largest region first. */
    List<List<Run>> regions() {
        List<Run> left = new ArrayList<>(runs());
        List<List<Run>> regions = new ArrayList<>();
        while (!left.isEmpty()) {
            List<Run> region = new ArrayList<>();
            Deque<Run> open = new ArrayDeque<>(List.of(left.remove(left.size() - 1)));
            while (!open.isEmpty()) {
                Run run = open.remove();
                region.add(run);
                List<Run> next = left.stream().filter(run::touches).toList();
                left.removeAll(next);
                open.addAll(next);
            }
            regions.add(region);
        }
        regions.sort(Comparator.comparingInt((List<Run> r) ->
                -r.stream().mapToInt(run -> run.to() - run.from()).sum()));
        return regions;
    }
}
