package org.lifeline.internal.mechanics.motion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;

/**
 * Cuts a line at rest into a chain of segments of about one length, with a joint at every support and attachment.
 *
 * <p>Nodes lie on the elastic catenaries of the line at rest. Each segment gets the unstretched length at which its
 * elastic tension is that of the catenary at its middle, so that the chain starts at rest but for terms of the second
 * order in the segment's length.
 */
final class ChainBuilder {
    /**
     * Least damping time, in times that an axial wave needs to cross a segment [-]: waves as short as a segment are not
     * the cable's but the mesh's, and shocks would feed them without end.
     */
    private static final double LEAST_DAMPING = 0.5;

    /** How much longer segments are in spans where nobody falls [-]. */
    private static final double COARSER = 2;

    /** Segments that such a span has at most. */
    private static final double COARSEST = 128;

    private final MotionSetup setup;
    private final LineModel model;
    private final double target;
    private final List<double[]> points = new ArrayList<>();
    private final List<double[]> segments = new ArrayList<>();
    private final List<Integer> jointNodes = new ArrayList<>();
    private final List<MotionSetup.Spot> jointSpots = new ArrayList<>();
    private final List<Double> references = new ArrayList<>();
    private final List<Integer> supportJoints = new ArrayList<>();
    private double massPerLength;

    /** What comes out. */
    static final class Result {
        final Chain chain;
        final List<Joint> joints;
        final double[] reference;
        final AnchorJoint[] anchors;
        final List<MotionSetup.Spot> spots;
        final List<Joint> spotJoints;

        Result(
                Chain chain,
                List<Joint> joints,
                double[] reference,
                AnchorJoint[] anchors,
                List<MotionSetup.Spot> spots,
                List<Joint> spotJoints) {
            this.chain = chain;
            this.joints = joints;
            this.reference = reference;
            this.anchors = anchors;
            this.spots = spots;
            this.spotJoints = spotJoints;
        }
    }

    /**
     * A builder.
     *
     * @param setup line and workers
     * @param target length that segments should have [m]
     */
    ChainBuilder(MotionSetup setup, double target) {
        this.setup = setup;
        this.model = setup.model;
        this.target = target;
    }

    Result build(double ringMass) {
        Lifeline line = model.line();
        for (int i = 0; i < line.spans(); i++) {
            cutSpan(i);
        }
        Point end = model.support(line.spans());
        supportJoints.add(jointNodes.size());
        jointNodes.add(points.size());
        points.add(new double[] {end.x(), end.y(), end.z()});
        int capacity = 2 * points.size() + 64;
        RopeLaw law = new RopeLaw(line.cable().elongation());
        double crossing = target * Math.sqrt(massPerLength / law.stiffest);
        double damping = Math.max(setup.dampingTime, LEAST_DAMPING * crossing);
        Chain c = new Chain(capacity, massPerLength, setup.gravity, law, damping);
        c.nodes = points.size();
        for (int i = 0; i < c.nodes; i++) {
            c.x[i] = points.get(i)[0];
            c.y[i] = points.get(i)[1];
            c.z[i] = points.get(i)[2];
        }
        for (int j = 0; j < c.segments(); j++) {
            double[] s = segments.get(j);
            double link = j == 0 ? link(0) : j == c.segments() - 1 ? link(1) : 0;
            double chord = Math.sqrt(square(c.x, j) + square(c.y, j) + square(c.z, j)) - link;
            double strain = line.cable().elongation().strain(s[1]);
            c.setLength(j, s[1] > 0 ? chord / (1 + strain) : s[0]);
        }
        return joints(c, ringMass);
    }

    private static double square(double[] x, int j) {
        return (x[j + 1] - x[j]) * (x[j + 1] - x[j]);
    }

    private double link(int end) {
        List<Piece> pieces = model.pieces(end == 0 ? 0 : model.line().spans() - 1);
        return end == 0
                ? model.support(0).distance(pieces.get(0).start())
                : model.support(model.line().spans())
                        .distance(pieces.get(pieces.size() - 1).end());
    }

    /** Adds the nodes of a span but its last, and its segments. */
    private void cutSpan(int span) {
        List<Piece> pieces = model.pieces(span);
        massPerLength = pieces.get(0).weight() / setup.gravity;
        double whole = pieces.stream().mapToDouble(Piece::length).sum();
        List<MotionSetup.Spot> inside = new ArrayList<>();
        for (MotionSetup.Spot each : setup.spots) {
            if (each.span == span) {
                inside.add(each);
            }
        }
        inside.sort(Comparator.comparingDouble(s -> s.distance));
        boolean falls = inside.stream().anyMatch(MotionSetup.Spot::hasFall);
        double least = Math.min(0.05, whole / 20);
        double from = 0;
        supportJoints.add(jointNodes.size());
        jointNodes.add(points.size());
        Point a = model.support(span);
        points.add(new double[] {a.x(), a.y(), a.z()});
        for (int k = 0; k <= inside.size(); k++) {
            boolean last = k == inside.size();
            double to = last ? whole : Math.min(Math.max(inside.get(k).distance, least), whole - least);
            to = last ? to : Math.max(to, from + 0.5 * least);
            cutBay(pieces, from, to, falls ? target : Math.max(COARSER * target, whole / COARSEST));
            if (!last) {
                jointNodes.add(points.size() - 1);
                jointSpots.add(inside.get(k));
            } else {
                points.remove(points.size() - 1);
            }
            from = to;
        }
    }

    private void cutBay(List<Piece> pieces, double from, double to, double about) {
        int n = Math.max(1, (int) Math.round((to - from) / about));
        references.add((to - from) / n);
        for (int k = 0; k < n; k++) {
            double s0 = from + (to - from) * k / n;
            double s1 = from + (to - from) * (k + 1) / n;
            segments.add(new double[] {s1 - s0, tension(pieces, 0.5 * (s0 + s1))});
            Point p = point(pieces, s1);
            points.add(new double[] {p.x(), p.y(), p.z()});
        }
    }

    private static double tension(List<Piece> pieces, double s) {
        double gone = 0;
        for (int k = 0; k < pieces.size(); k++) {
            Piece p = pieces.get(k);
            if (s <= gone + p.length() || k == pieces.size() - 1) {
                return p.startTension()
                        .plus(new Vector3(0, 0, p.weight() * (s - gone)))
                        .magnitude();
            }
            gone += p.length();
        }
        throw new IllegalStateException("unreachable: a span has at least one piece");
    }

    private static Point point(List<Piece> pieces, double s) {
        double gone = 0;
        for (int k = 0; k < pieces.size(); k++) {
            Piece p = pieces.get(k);
            if (s <= gone + p.length() || k == pieces.size() - 1) {
                return p.at(Math.min(s - gone, p.length()));
            }
            gone += p.length();
        }
        throw new IllegalStateException("unreachable: a span has at least one piece");
    }

    private Result joints(Chain c, double ringMass) {
        List<Joint> joints = new ArrayList<>();
        List<Joint> spotJoints = new ArrayList<>();
        AnchorJoint[] anchors = new AnchorJoint[supportJoints.size()];
        int support = 0;
        int spot = 0;
        for (int k = 0; k < jointNodes.size(); k++) {
            int node = jointNodes.get(k);
            if (support < anchors.length && supportJoints.get(support) == k) {
                AnchorJoint anchor = new AnchorJoint(
                        c,
                        node,
                        model.line().supports().get(support),
                        model.reaction(support),
                        model.displacement(support));
                anchors[support++] = anchor;
                joints.add(anchor);
            } else {
                MotionSetup.Spot at = jointSpots.get(spot++);
                Joint joint = at.gripped ? new GripJoint(c, node) : new TravellerJoint(c, node, ringMass);
                joints.add(joint);
                spotJoints.add(joint);
            }
        }
        for (int i = 0; i < c.nodes; i++) {
            c.mobility[i] = 1 / c.mass(i);
        }
        double[] reference =
                references.stream().mapToDouble(Double::doubleValue).toArray();
        for (int k = 0; k < joints.size(); k++) {
            Joint joint = joints.get(k);
            if (!(joint instanceof GripJoint)) {
                c.mobility[joint.node] = 0;
            }
            joint.leastBefore = k > 0 ? 0.15 * reference[k - 1] : 0;
            joint.leastBehind = k < reference.length ? 0.15 * reference[k] : 0;
            if (joint instanceof TravellerJoint t) {
                t.between(joints.get(k - 1), joints.get(k + 1));
                t.contactDistance = 0.25 * Math.min(reference[k - 1], reference[k]);
            }
        }
        return new Result(c, joints, reference, anchors, jointSpots, spotJoints);
    }
}
