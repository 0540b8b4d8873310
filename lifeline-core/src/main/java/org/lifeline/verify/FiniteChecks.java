package org.lifeline.verify;

import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.ClearanceNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Counts numbers that are infinite or not numbers at all. */
final class FiniteChecks {
    private FiniteChecks() {}

    static void check(StateNumbers state, String name, CheckLog log) {
        DoubleStream pieces = state.pieces()
                .flatMapToDouble(p -> DoubleStream.concat(
                        DoubleStream.of(p.length(), p.weight(), p.load()),
                        DoubleStream.concat(
                                points(Stream.of(p.start(), p.end())),
                                vectors(Stream.of(p.startTension(), p.endTension())))));
        DoubleStream spans = points(state.spans().stream().flatMap(s -> Stream.of(s.first(), s.second())));
        DoubleStream supports = DoubleStream.concat(
                vectors(state.supports().stream().flatMap(s -> Stream.of(s.vector(), s.displacement()))),
                state.supports().stream().mapToDouble(s -> s.slip()));
        DoubleStream absorbers =
                state.absorbers().stream().flatMapToDouble(a -> DoubleStream.of(a.extension(), a.remaining()));
        DoubleStream loads = DoubleStream.concat(
                points(state.loads().stream().map(l -> l.point())),
                state.loads().stream().mapToDouble(l -> l.force()));
        count(name, log, Stream.of(pieces, spans, supports, absorbers, loads, DoubleStream.of(state.temperature())));
    }

    static void check(ArrestNumbers a, CheckLog log) {
        EnergyAccount e = a.energy();
        ClearanceNumbers c = a.clearance();
        DoubleStream energy = DoubleStream.of(
                e.fall(), e.cable(), e.hanging(), e.connection(), e.friction(), e.inlineAbsorbers(), e.anchors());
        DoubleStream arrest = DoubleStream.of(a.freeFall(), a.deployment(), a.arrestForce(), a.lineLoad());
        DoubleStream levels = DoubleStream.of(
                c.lineElevation(), c.lowestPoint(), c.requiredElevation(), c.belowLine(), c.belowWalkingLevel());
        DoubleStream rows = c.rows().stream().flatMapToDouble(r -> DoubleStream.of(r.value(), r.elevation()));
        ArrestNumbers.Distances d = a.distances();
        DoubleStream distances = DoubleStream.concat(
                DoubleStream.of(d.sag(), d.lineDescent(), d.loadX(), d.totalFallDistance()),
                d.slip().stream().mapToDouble(Double::doubleValue));
        DoubleStream places = points(Stream.of(a.attachmentBefore(), a.attachmentAtPeak()));
        count("arrest", log, Stream.of(energy, arrest, levels, rows, distances, places));
    }

    private static void count(String name, CheckLog log, Stream<DoubleStream> numbers) {
        double wrong = (double)
                numbers.flatMapToDouble(s -> s).filter(x -> !Double.isFinite(x)).count();
        log.add(Check.FINITE, name, wrong);
    }

    private static DoubleStream points(Stream<Point> points) {
        return points.flatMapToDouble(p -> DoubleStream.of(p.x(), p.y(), p.z()));
    }

    private static DoubleStream vectors(Stream<Vector3> vectors) {
        return vectors.flatMapToDouble(v -> DoubleStream.of(v.x(), v.y(), v.z()));
    }
}
