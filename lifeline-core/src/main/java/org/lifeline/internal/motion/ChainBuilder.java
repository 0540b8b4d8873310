package org.lifeline.internal.motion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.internal.numeric.OrderedWork;
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
    private final MotionSetup setup;
    private final LineModel model;
    private final double target;
    private final List<Point> points = new ArrayList<>();
    private final List<Segment> segments = new ArrayList<>();
    private final List<Integer> jointNodes = new ArrayList<>();
    private final List<MotionSetup.Spot> jointSpots = new ArrayList<>();
    private final List<Double> references = new ArrayList<>();
    private final List<Integer> supportJoints = new ArrayList<>();
    private double massPerLength;

    /** A segment as the line at rest has it: its unstretched length [m] and the tension at its middle [N]. */
    private record Segment(double length, double tension) {}

    /**
     * What comes out.
     *
     * @param chain the chain
     * @param joints its joints in their order
     * @param reference reference length of the segments between joint i and joint i + 1 [m]
     * @param anchors the joints that are supports
     * @param attachments the joints that are attachments, with who is attached there
     */
    record Result(
            LumpedMassChain chain,
            List<Joint> joints,
            List<Double> reference,
            List<SupportJoint> anchors,
            List<Attached> attachments) {}

    /** An attachment and its joint. */
    record Attached(MotionSetup.Spot spot, Joint joint) {}

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
        points.add(end);
        int capacity = 2 * points.size() + NumericalParameters.SPARE_NODES;
        TensionStrainLaw law = new TensionStrainLaw(line.cable().elongation());
        double crossing = target * Math.sqrt(massPerLength / law.stiffest);
        double damping = Math.max(setup.dampingTime, NumericalParameters.LEAST_DAMPING * crossing);
        LumpedMassChain c = new LumpedMassChain(capacity, massPerLength, setup.gravity, law, damping);
        c.nodes = points.size();
        for (int i = 0; i < c.nodes; i++) {
            c.x[i] = points.get(i).x();
            c.y[i] = points.get(i).y();
            c.z[i] = points.get(i).z();
        }
        for (int j = 0; j < c.segments(); j++) {
            Segment s = segments.get(j);
            double link = j == 0 ? link(0) : j == c.segments() - 1 ? link(1) : 0;
            double chord = Math.sqrt(square(c.x, j) + square(c.y, j) + square(c.z, j)) - link;
            double strain = line.cable().elongation().strain(s.tension);
            c.setLength(j, s.tension > 0 ? chord / (1 + strain) : s.length);
        }
        return joints(c, ringMass);
    }

    private static double square(double[] x, int j) {
        return (x[j + 1] - x[j]) * (x[j + 1] - x[j]);
    }

    /** Length of the link of an in-line absorber [m]: below zero where the tension is lower than as installed. */
    private double link(int end) {
        return model.extension(end) - model.installedExtension(end);
    }

    /** Adds the nodes of a span but its last, and its segments. */
    private void cutSpan(int span) {
        OrderedWork.stopIfInterrupted();
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
        boolean falls = setup.fallsAt(span);
        double least = Math.min(NumericalParameters.ROOM_AT_SUPPORT, whole * NumericalParameters.ROOM_AT_SUPPORT_SHARE);
        double from = 0;
        supportJoints.add(jointNodes.size());
        jointNodes.add(points.size());
        Point a = model.support(span);
        points.add(a);
        for (int k = 0; k <= inside.size(); k++) {
            boolean last = k == inside.size();
            double to = last ? whole : Math.min(Math.max(inside.get(k).distance, least), whole - least);
            to = last ? to : Math.max(to, from + 0.5 * least);
            cutBay(
                    pieces,
                    from,
                    to,
                    falls
                            ? target
                            : Math.max(NumericalParameters.COARSER * target, whole / NumericalParameters.COARSEST));
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
            segments.add(new Segment(s1 - s0, tension(pieces, 0.5 * (s0 + s1))));
            points.add(point(pieces, s1));
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

    private Result joints(LumpedMassChain c, double ringMass) {
        List<Joint> joints = new ArrayList<>();
        List<Attached> attachments = new ArrayList<>();
        List<SupportJoint> anchors = new ArrayList<>();
        int support = 0;
        int spot = 0;
        for (int k = 0; k < jointNodes.size(); k++) {
            int node = jointNodes.get(k);
            if (support < supportJoints.size() && supportJoints.get(support) == k) {
                SupportJoint anchor = new SupportJoint(
                        c,
                        node,
                        model.line().supports().get(support),
                        model.reaction(support),
                        model.displacement(support));
                anchors.add(anchor);
                support++;
                joints.add(anchor);
            } else {
                MotionSetup.Spot at = jointSpots.get(spot++);
                Joint joint = at.gripped ? new FixedJoint(c, node) : new SlidingJoint(c, node, ringMass);
                joints.add(joint);
                attachments.add(new Attached(at, joint));
            }
        }
        for (MotionSetup.Spot each : setup.spots) {
            if (each.support >= 0) {
                attachments.add(new Attached(each, anchors.get(each.support)));
            }
        }
        for (int i = 0; i < c.nodes; i++) {
            c.mobility[i] = 1 / c.mass(i);
        }
        for (int k = 0; k < joints.size(); k++) {
            Joint joint = joints.get(k);
            if (!(joint instanceof FixedJoint)) {
                c.mobility[joint.node] = 0;
            }
            joint.leastBefore = k > 0 ? NumericalParameters.LEAST_REMAINDER * references.get(k - 1) : 0;
            joint.leastBehind = k < references.size() ? NumericalParameters.LEAST_REMAINDER * references.get(k) : 0;
            if (joint instanceof SlidingJoint t) {
                double least = Math.min(references.get(k - 1), references.get(k));
                t.between(joints.get(k - 1), joints.get(k + 1), NumericalParameters.CONTACT_DISTANCE * least);
            }
        }
        return new Result(c, joints, references, anchors, attachments);
    }
}
