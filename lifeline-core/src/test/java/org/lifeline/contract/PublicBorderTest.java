package org.lifeline.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.analysis.AttachmentLimits;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.LoadedSpans;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Requirement;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.study.Distribution;
import org.lifeline.design.study.Evaluation;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.variable.Axis;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.design.variable.FeasibleSearch;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.LoadArrangement;
import org.lifeline.verify.state.LoadNodes;
import org.lifeline.verify.state.LoadingTable;
import org.lifeline.verify.state.MaterialPoints;
import org.lifeline.verify.state.PieceNumbers;
import org.lifeline.verify.state.Quadrature;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/**
 * What comes in through the public border is refused by the library's own exception, which names the field and the rule: never
 * by a bare exception of the platform.
 */
class PublicBorderTest {
    private static final List<String> PACKAGES = List.of("analysis", "model", "design", "verify");

    /** Null, where the compiler of the tests would not have it. */
    @SuppressWarnings({"NullAway", "TypeParameterUnusedInFormals"})
    private static <T> T none() {
        return (T) null;
    }

    private static DynamicTest refused(String call, String path, ThrowingCallable tried) {
        return dynamicTest(call, () -> {
            Throwable thrown = catchThrowable(tried);
            assertThat(thrown).as(call).isInstanceOf(InvalidInputException.class);
            List<Violation> found = ((InvalidInputException) thrown).violations();
            assertThat(found).extracting(Violation::path).containsExactly(path);
            assertThat(found.get(0).rule()).isNotBlank();
        });
    }

    @TestFactory
    Stream<DynamicTest> theModelRefuses() {
        LoadingCurve curve = LoadingCurve.spring(1e5);
        return Stream.of(
                refused("at no support", "id", () -> Place.atSupport(none())),
                refused("station NaN", "station", () -> Place.of(1, Double.NaN)),
                refused("station infinite", "station", () -> Place.of(1, Double.POSITIVE_INFINITY)),
                refused(
                        "fall without a name",
                        "id",
                        () -> Fall.builder(none())
                                .at(Place.of(1, 6))
                                .faller(SetterSamples.worker())
                                .build()),
                refused("hanging nobody", "worker", () -> new Fall.Hanging(none(), Place.of(1, 6))),
                refused("hanging nowhere", "place", () -> new Fall.Hanging(SetterSamples.worker(), none())),
                refused("no place", "place", () -> SetterSamples.line().stationOf(none())),
                refused("unknown support", "place", () -> SetterSamples.line().supportOf(Place.atSupport("x"))),
                refused(
                        "place on the cable",
                        "place",
                        () -> SetterSamples.line().supportOf(Place.of(1, 6))),
                refused("no such piece", "piece", () -> curve.slopeOfPiece(1)),
                refused("negative piece", "piece", () -> curve.pieceStart(-1)),
                refused(
                        "piece of a cable",
                        "piece",
                        () -> SetterSamples.cable().elongation().compliance(1)),
                refused(
                        "curves side by side",
                        "curves[0]",
                        () -> LoadingCurve.parallel(Arrays.asList(PublicBorderTest.<LoadingCurve>none()))));
    }

    @TestFactory
    Stream<DynamicTest> theAnalysesRefuse() {
        EnergyBalance balance = EnergyBalance.withDefaults();
        Statics statics = Statics.withDefaults();
        LineEquilibrium rest = statics.solve(SetterSamples.line(), List.of());
        LoadedSpans.Solution spans = LoadedSpans.builder()
                .run(10)
                .weightPerLength(5)
                .axialStiffness(4e6)
                .unstretchedLength(10.1)
                .loadShare(0.5)
                .load(1000)
                .build()
                .solve();
        AttachmentLimits limits = balance.solveLimits(SetterSamples.line(), SetterSamples.fall());
        return Stream.of(
                refused("balance of no line", "line", () -> balance.solve(none(), SetterSamples.fall())),
                refused("balance of no fall", "fall", () -> balance.solve(SetterSamples.line(), none())),
                refused("limits of no fall", "fall", () -> balance.solveLimits(SetterSamples.line(), none())),
                refused("statics of no line", "line", () -> statics.solve(none(), List.of())),
                refused("statics of no loads", "loads", () -> statics.solve(SetterSamples.line(), none())),
                refused(
                        "statics of a load that is none",
                        "loads[0]",
                        () -> statics.solve(SetterSamples.line(), Arrays.asList(PublicBorderTest.<AppliedLoad>none()))),
                refused(
                        "motion of no fall",
                        "fall",
                        () -> TransientArrest.withDefaults().solve(SetterSamples.line(), none())),
                refused("supports of no line", "line", () -> Statics.withYieldedSupports(none())),
                refused("point of no line", "line", () -> Statics.placeOfCablePoint(none(), 1)),
                refused("load nowhere", "place", () -> new AppliedLoad(none(), Attachment.GRIPPED, 1)),
                refused("row beyond the last", "row", () -> spans.drop(1)),
                refused("row before the first", "row", () -> spans.startReaction(-1)),
                refused("too many points", "intervals", () -> rest.shape(Integer.MAX_VALUE)),
                refused("no point", "intervals", () -> rest.span(1).shape(0)),
                refused(
                        "nowhere on a piece",
                        "length",
                        () -> rest.span(1).pieces().get(0).pointAt(Double.NaN)),
                refused("no units", "system", () -> rest.explainIn(none())),
                refused("no limit", "limit", () -> limits.at(none())));
    }

    @TestFactory
    Stream<DynamicTest> theDesignFloorRefuses() {
        LifelineDesign design = SetterSamples.design().build();
        Evaluation nothing = none();
        return Stream.of(
                refused(
                        "envelope of nothing",
                        "design",
                        () -> Envelope.withDefaults().solve(none())),
                refused(
                        "falls of nothing",
                        "design",
                        () -> DesignAnalysis.withDefaults().solve(none())),
                refused(
                        "search by a criterion that is none",
                        "criteria[0]",
                        () -> FeasibleSearch.withCriteria(Arrays.asList(PublicBorderTest.<Criterion>none()))),
                refused(
                        "search of nothing",
                        "variable",
                        () -> FeasibleSearch.withCriteria(Criteria.builtIn()).solve(design, none())),
                refused(
                        "any of none",
                        "requirements[0]",
                        () -> Requirement.anyOf(PublicBorderTest.<Requirement>none())),
                refused("an elevation has no ratio", "quantity", () -> CheckedQuantity.of(Quantity.REQUIRED_ELEVATION)),
                refused("no bounds", "bounds", () -> DesignVariables.pretension(none())),
                refused(
                        "too many values",
                        "count",
                        () -> Axis.even(DesignVariables.pretension(Interval.of(1000, 2000)), Integer.MAX_VALUE)),
                refused(
                        "study of nothing",
                        "evaluation",
                        () -> MonteCarlo.withSeed(1).solve(design, List.of(), nothing, 1)),
                refused(
                        "share beyond all",
                        "share",
                        () -> Distribution.normal(0, 1).quantile(1)),
                refused(
                        "share that is no number",
                        "share",
                        () -> Distribution.normal(0, 1).quantile(Double.NaN)));
    }

    /** Every public method of what the checks read, given numbers of nothing and nothing at all. */
    @TestFactory
    Stream<DynamicTest> whatTheChecksReadRefuses() {
        Lifeline line = SetterSamples.line();
        ArrestNumbers arrest = ArrestNumbers.of(EnergyBalance.withDefaults().solve(line, SetterSamples.fall()));
        StateNumbers state = arrest.peak();
        CableIntegration integration = CableIntegration.of(line.cable());
        PieceNumbers piece = state.span(1).firstPiece();
        LoadArrangement loads = LoadArrangement.of(state, state, arrest.loadsAtPeak());
        Stream<Object> read = Stream.of(
                arrest,
                arrest.distances(),
                arrest.clearance(),
                state,
                state.span(1),
                piece,
                integration,
                integration.law(),
                integration.quadrature(),
                integration.shape(piece),
                new MaterialPoints(state, integration),
                new LoadingTable(LoadingCurve.spring(1e5), integration.quadrature()),
                loads);
        Stream<DynamicTest> each = read.flatMap(o -> Arrays.stream(o.getClass().getDeclaredMethods())
                .filter(m -> Modifier.isPublic(m.getModifiers()) && !Modifier.isStatic(m.getModifiers()))
                .filter(m -> m.getParameterCount() > 0 && !m.getName().equals("equals"))
                .map(m -> dynamicTest(m.toString(), () -> onlyRefuses(m, o))));
        int spans = line.spans();
        return Stream.concat(
                each,
                Stream.of(
                        refused("span 0", "span", () -> state.span(0)),
                        refused("span beyond the last", "span", () -> state.chord(spans + 1)),
                        refused("support beyond the last", "support", () -> state.tensionBehind(spans + 1)),
                        refused("support before the first", "support", () -> state.extension(-1)),
                        refused("span behind the last", "span", () -> loads.isJammed(spans, true)),
                        refused(
                                "a load that is not there",
                                "load",
                                () -> loads.before(new AppliedLoad(Place.of(1, 1), Attachment.GRIPPED, 1))),
                        refused("a rule of no point", "points", () -> new Quadrature(0, 1e-9)),
                        refused("a rule without a bound", "tolerance", () -> new Quadrature(4, Double.NaN)),
                        refused(
                                "a state of no span",
                                "spans",
                                () -> new StateNumbers(line, 20, List.of(), List.of(), List.of(), List.of())),
                        refused(
                                "a span without cable",
                                "pieces",
                                () -> new SpanNumbers(1, new Point(0, 0, 0), new Point(1, 0, 0), List.of())),
                        refused(
                                "a load without a node",
                                "span.pieces",
                                () -> LoadNodes.of(
                                        arrest.before().span(1),
                                        java.util.Collections.nCopies(
                                                2, state.loads().get(0))))));
    }

    /** A variation whose square is lost below the smallest double still spreads: by the variation itself. */
    @Test
    void aTinyVariationOfALognormalIsTaken() {
        // The 84.13 % quantile lies one deviation of the logarithm above the median.
        double one = 0.8413447460685429;
        assertThat(Distribution.logNormal(1, 1e-200).quantile(one)).isEqualTo(1);
        assertThat(Distribution.logNormal(1, 0.99e-8).quantile(one) - 1)
                .isCloseTo(0.99e-8, org.assertj.core.data.Offset.offset(1e-15));
    }

    /** Every public factory and constructor, given nothing at all: it refuses, or takes it, but throws nothing else. */
    @TestFactory
    Stream<DynamicTest> nothingAtAll() throws IOException, URISyntaxException, ClassNotFoundException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Class<?> type : types()) {
            Stream<Executable> factories = Arrays.stream(type.getDeclaredMethods())
                    .filter(m -> Modifier.isStatic(m.getModifiers()) && !m.isSynthetic())
                    .map(m -> m);
            Stream<Executable> makers = Stream.concat(factories, Arrays.stream(type.getConstructors()));
            makers.filter(m -> Modifier.isPublic(m.getModifiers()) && m.getParameterCount() > 0)
                    .filter(m -> !(type.isEnum() && m.getName().equals("valueOf")))
                    .sorted(java.util.Comparator.comparing(Executable::toString))
                    .forEach(m -> tests.add(dynamicTest(m.toString(), () -> onlyRefuses(m, none()))));
        }
        assertThat(tests).hasSizeGreaterThan(100);
        return tests.stream();
    }

    private static void onlyRefuses(Executable maker, @Nullable Object of) {
        @Nullable
        Object[] arguments = Arrays.stream(maker.getParameterTypes())
                .map(PublicBorderTest::nothing)
                .toArray();
        Throwable thrown = catchThrowable(() -> {
            try {
                if (maker instanceof Method m) {
                    m.invoke(of, arguments);
                } else {
                    ((Constructor<?>) maker).newInstance(arguments);
                }
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        });
        if (thrown != null) {
            assertThat(thrown).as("%s", maker).isInstanceOf(InvalidInputException.class);
        }
    }

    private static @Nullable Object nothing(Class<?> type) {
        if (type == double.class) {
            return Double.NaN;
        }
        if (type == int.class) {
            return -1;
        }
        if (type == long.class) {
            return -1L;
        }
        return type == boolean.class ? false : null;
    }

    private static List<Class<?>> types() throws IOException, URISyntaxException, ClassNotFoundException {
        Path root = Path.of(
                Worker.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        List<Class<?>> list = new ArrayList<>();
        for (String each : PACKAGES) {
            try (Stream<Path> files = Files.walk(root.resolve("org/lifeline").resolve(each))) {
                for (Path file : files.filter(f -> f.toString().endsWith(".class"))
                        .sorted()
                        .toList()) {
                    String name = root.relativize(file).toString().replace(".class", "");
                    Class<?> type = Class.forName(name.replace('/', '.').replace('\\', '.'));
                    // What the assessment floor hands over is made by the library alone.
                    if (isPublic(type) && !type.getPackageName().endsWith("assessment")) {
                        list.add(type);
                    }
                }
            }
        }
        return list;
    }

    private static boolean isPublic(Class<?> type) {
        return Modifier.isPublic(type.getModifiers())
                && (type.getEnclosingClass() == null || isPublic(type.getEnclosingClass()));
    }
}
