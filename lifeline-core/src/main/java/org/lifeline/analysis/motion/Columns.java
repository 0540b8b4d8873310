package org.lifeline.analysis.motion;

/** Copies of columns of numbers. */
final class Columns {
    private Columns() {}

    static double[][] copy(double[][] columns) {
        double[][] copy = new double[columns.length][];
        for (int i = 0; i < columns.length; i++) {
            copy[i] = columns[i].clone();
        }
        return copy;
    }
}
