package org.lifeline.testing;

import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.model.Installed;

/**
 * Draws an installed state that the line can take: the tension is aimed at the lowest support, in units of the weight of
 * the longest span, and carried to the place where it is stated by the catenary's rule that it grows by the weight of
 * the height.
 */
final class Installing {
    private final Chance chance;
    private final List<Point> points;
    private final double weight;
    private final double stiffness;
    private double tension;

    Installing(Chance chance, List<Point> points, double weight, double stiffness) {
        this.chance = chance;
        this.points = points;
        this.weight = weight;
        this.stiffness = stiffness;
    }

    /** Tension at the first support that was aimed at [N]. */
    double tension() {
        return tension;
    }

    Installed draw() {
        double lowest = points.stream().mapToDouble(Point::z).min().orElse(0);
        double heaviest = 0;
        for (int i = 1; i < points.size(); i++) {
            heaviest = Math.max(heaviest, weight * points.get(i).distance(points.get(i - 1)));
        }
        double least = Math.max(heaviest, 1e-6 * stiffness);
        double low = chance.is(0.5) ? least * chance.uniform(1, 3) : least * chance.log(1, 100);
        low = Math.max(heaviest, Math.min(low, 0.02 * stiffness));
        tension = low + weight * (points.get(0).z() - lowest);
        int span = chance.whole(1, points.size() - 1);
        double high = low
                + weight * (Math.max(points.get(span - 1).z(), points.get(span).z()) - lowest);
        Point a = points.get(span - 1);
        Point b = points.get(span);
        double chord = a.distance(b);
        double run = a.horizontalDistance(b);
        return switch (weight > 0 ? chance.whole(0, 3) : 0) {
            case 1 -> Installed.horizontalTension(high * run / chord).inSpan(span);
            case 2 -> {
                double sag = weight * chord * chord / (8 * high);
                boolean alone = points.size() == 2;
                yield Installed.initialSag(span, alone && chance.is(0.5) ? chord * chance.log(1e-3, 0.2) : sag);
            }
            case 3 -> Installed.unstretchedLength(length(low, lowest));
            default -> Installed.pretension(tension);
        };
    }

    /** Unstretched length by the parabola: chord plus sag's share, less stretch; of one span also any slack to 20 %. */
    private double length(double low, double lowest) {
        double sum = 0;
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            double chord = a.distance(b);
            if (points.size() == 2 && chance.is(0.6)) {
                return chord * (1 + chance.uniform(-0.01, 0.2));
            }
            double t = low + weight * (0.5 * (a.z() + b.z()) - lowest);
            double sagging = weight * a.horizontalDistance(b) / t;
            sum += chord * (1 + sagging * sagging / 24) / (1 + t / stiffness);
        }
        return sum;
    }
}
