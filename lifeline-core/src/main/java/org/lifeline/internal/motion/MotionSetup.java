package org.lifeline.internal.motion;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * What a motion starts from: a line at rest and the workers on it. The same setup serves for every mesh.
 *
 * <p>Not thread-safe.
 */
public final class MotionSetup {
    final LineModel model;
    final double dampingTime;
    final double gravity;
    final List<Spot> spots = new ArrayList<>();

    /**
     * A worker of the motion.
     *
     * @param mass mass [kg]
     * @param curve force of the connecting subsystem on first loading
     * @param tautLength length of the subsystem when taut [m]
     * @param timing when and how far the worker falls
     */
    public record Person(double mass, LoadingCurve curve, double tautLength, Timing timing) {
        double start() {
            return timing.start;
        }
    }

    /**
     * When and how far a worker falls.
     *
     * @param start when the fall begins [s]; negative infinity for one who hangs at rest
     * @param freeFall free fall before the subsystem is taut, if the line stays where it is [m]
     * @param first true if this is the fall whose first catch is followed, false for one beside it or later
     */
    public record Timing(double start, double freeFall, boolean first) {
        /**
         * For one who hangs at rest already.
         *
         * @return the timing
         */
        public static Timing hanging() {
            return new Timing(Double.NEGATIVE_INFINITY, 0, false);
        }
    }

    /** A place where workers are attached: on the cable of a span, or at a support, which has no span. */
    static final class Spot {
        /** The support; −1 on the cable. */
        final int support;

        final int span;
        final double distance;
        final boolean gripped;
        final List<Person> people = new ArrayList<>();
        final List<Integer> numbers = new ArrayList<>();

        Spot(int span, double distance, boolean gripped) {
            this.support = -1;
            this.span = span;
            this.distance = distance;
            this.gripped = gripped;
        }

        Spot(int support) {
            this.support = support;
            this.span = -1;
            this.distance = 0;
            this.gripped = true;
        }

        /** Tells whether a span ends at it, or has it on its cable. */
        boolean touches(int number) {
            return support < 0 ? span == number : support == number || support == number + 1;
        }

        /** Tells whether somebody falls here, now or later. */
        boolean hasFall() {
            return people.stream().anyMatch(p -> p.start() > Double.NEGATIVE_INFINITY);
        }
    }

    private int people;

    /**
     * A line at rest.
     *
     * @param model the line, at its temperature and with those who hang on it
     * @param dampingTime internal damping time of the cable [s], not negative
     */
    public MotionSetup(LineModel model, double dampingTime) {
        this.model = model;
        this.dampingTime = dampingTime;
        this.gravity = model.line().gravity();
    }

    /**
     * Attaches workers at a place.
     *
     * @param span span from 0
     * @param point the point of the cable that they are attached to
     * @param gripped true if the attachment holds the cable
     * @param who the workers
     * @return the number of the first of them; the others follow
     */
    public int attach(int span, Point point, boolean gripped, List<Person> who) {
        double s = distance(span, point);
        Spot spot = null;
        for (Spot each : spots) {
            if (each.span == span && Math.abs(each.distance - s) < NumericalParameters.TOGETHER) {
                spot = each;
            }
        }
        if (spot == null) {
            spot = new Spot(span, s, gripped);
            spots.add(spot);
        }
        return attach(spot, who);
    }

    /**
     * Attaches workers to a support: they pull on the anchor itself, and the line takes part by what the support yields.
     *
     * @param support the support from 0
     * @param who the workers
     * @return the number of the first of them; the others follow
     */
    public int attachToSupport(int support, List<Person> who) {
        Spot spot = new Spot(support);
        spots.add(spot);
        return attach(spot, who);
    }

    private int attach(Spot spot, List<Person> who) {
        int first = people;
        for (Person each : who) {
            spot.people.add(each);
            spot.numbers.add(people++);
        }
        return first;
    }

    /** Chord of the shortest span in which somebody falls [m]. */
    double shortestSpan() {
        double shortest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < model.line().spans(); i++) {
            if (fallsAt(i)) {
                shortest = Math.min(shortest, model.support(i).distance(model.support(i + 1)));
            }
        }
        return shortest < Double.POSITIVE_INFINITY ? shortest : 1;
    }

    /** Tells whether somebody falls in a span or at one of its supports, now or later. */
    boolean fallsAt(int span) {
        return spots.stream().anyMatch(s -> s.hasFall() && s.touches(span));
    }

    /** Number of workers. */
    int people() {
        return people;
    }

    /** Unstretched length of cable from the start of a span to a point of it. */
    private double distance(int span, Point point) {
        double gone = 0;
        List<Piece> pieces = model.pieces(span);
        for (int k = 0; k < pieces.size(); k++) {
            Piece piece = pieces.get(k);
            double whole = piece.start().horizontalDistance(piece.end());
            double want = piece.start().horizontalDistance(point);
            if (want <= whole || k == pieces.size() - 1) {
                return gone + within(piece, Math.min(want, whole));
            }
            gone += piece.length();
        }
        throw new IllegalStateException("unreachable: a span has at least one piece");
    }

    private static double within(Piece piece, double run) {
        double low = 0;
        double high = piece.length();
        while (high - low > NumericalParameters.PLACE_ROUNDING * piece.length()) {
            double s = 0.5 * (low + high);
            if (piece.start().horizontalDistance(piece.at(s)) < run) {
                low = s;
            } else {
                high = s;
            }
        }
        return 0.5 * (low + high);
    }
}
