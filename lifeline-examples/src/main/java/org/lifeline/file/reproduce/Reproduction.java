package org.lifeline.file.reproduce;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.base.ProgressListener;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.MotionScope;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.file.DesignFile;
import org.lifeline.file.LibraryVersion;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.IndependentCheck;
import org.lifeline.file.result.ResultProvenance;
import org.lifeline.file.result.ResultWriter;
import org.lifeline.verify.Verifier;

/**
 * Checks a result file against its design file.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Reproduction {
    /** Largest relative difference that counts as the same number, unless set [-]. */
    public static final double DEFAULT_TOLERANCE = 1e-6;

    /** Largest result file that is written and read [bytes]. */
    public static final int LARGEST_FILE = 200_000_000;

    private final String libraryVersion;
    private final double tolerance;
    private final ProgressListener listener;
    private final Function<ArrestResult, List<String>> independentCheck;
    private final @Nullable Executor executor;

    private Reproduction(
            String libraryVersion,
            double tolerance,
            ProgressListener listener,
            Function<ArrestResult, List<String>> independentCheck,
            @Nullable Executor executor) {
        this.executor = executor;
        this.libraryVersion = libraryVersion;
        this.tolerance = tolerance;
        this.listener = listener;
        this.independentCheck = independentCheck;
    }

    /**
     * The reproduction by this version of the library.
     *
     * @return the reproduction, with {@link #DEFAULT_TOLERANCE}
     */
    public static Reproduction withDefaults() {
        return by(LibraryVersion.text());
    }

    /**
     * The reproduction by a version of the library that its caller names.
     *
     * @param libraryVersion the version that computes
     * @return the reproduction, with {@link #DEFAULT_TOLERANCE}
     */
    public static Reproduction by(String libraryVersion) {
        return new Reproduction(
                libraryVersion, DEFAULT_TOLERANCE, ProgressListener.none(), Reproduction::failures, null);
    }

    /**
     * The same with another tolerance.
     *
     * @param value largest relative difference that counts as the same number [-], not negative
     * @return the new reproduction
     */
    public Reproduction withTolerance(double value) {
        return new Reproduction(libraryVersion, value, listener, independentCheck, executor);
    }

    /**
     * The same with a listener that hears of each arrest that is computed anew.
     *
     * @param value the listener
     * @return the new reproduction
     */
    public Reproduction withProgress(ProgressListener value) {
        return new Reproduction(libraryVersion, tolerance, value, independentCheck, executor);
    }

    /**
     * The same with its work done on an executor; the calling thread helps and waits. The outcome is the same.
     *
     * @param value the executor
     * @return the new reproduction
     */
    public Reproduction withExecutor(Executor value) {
        return new Reproduction(libraryVersion, tolerance, listener, independentCheck, value);
    }

    /** The same with another check of the recomputed arrests. */
    Reproduction withIndependentCheck(Function<ArrestResult, List<String>> value) {
        return new Reproduction(libraryVersion, tolerance, listener, value, executor);
    }

    /**
     * What was found.
     *
     * @param verdict what the file turned out to be
     * @param identity what the file says about itself, and what is so
     * @param compared number of values that were compared
     * @param differences values that differ by more than the tolerance
     * @param stored checks of the stored numbers, without the solver
     * @param verified checks of the recomputed results by the independent verifier that failed; empty where none could be
     *     made, since an arrest in time is no equilibrium
     * @since 1.0.0
     */
    public record Outcome(
            Verdict verdict,
            List<String> identity,
            int compared,
            List<Difference> differences,
            List<StoredCheck> stored,
            Optional<List<String>> verified) {
        /**
         * Copies the lists.
         *
         * @param verdict what the file turned out to be
         * @param identity what the file says about itself, and what is so
         * @param compared number of values that were compared
         * @param differences values that differ by more than the tolerance
         * @param stored checks of the stored numbers, without the solver
         * @param verified checks of the recomputed results that failed; empty where none could be made
         */
        public Outcome {
            identity = List.copyOf(identity);
            differences = List.copyOf(differences);
            stored = List.copyOf(stored);
            verified = verified.map(List::copyOf);
        }

        /**
         * The checks of stored numbers that failed.
         *
         * @return the failures; unmodifiable
         */
        public List<StoredCheck> broken() {
            return stored.stream().filter(c -> !c.holds()).toList();
        }
    }

    private static Outcome unusable(Verdict verdict, String why) {
        return new Outcome(verdict, List.of(why), 0, List.of(), List.of(), Optional.empty());
    }

    /**
     * Checks a result.
     *
     * @param design the design file as read
     * @param result the bytes of the result file
     * @return what was found
     * @throws org.lifeline.base.InvalidInputException if the design cannot be computed
     * @throws org.lifeline.base.NoEquilibriumException if an equilibrium was not found
     */
    public Outcome check(DesignFile design, byte[] result) {
        StoredResult stored = StoredResult.read(result);
        if (stored.root() == null || stored.verdict() != null) {
            return unusable(stored.verdict() == null ? Verdict.DAMAGED : stored.verdict(), stored.why());
        }
        return compare(design, stored.root());
    }

    private Outcome compare(DesignFile design, JsonNode stored) {
        boolean ours = stored.path("format").asText().startsWith("org.lifeline.result/");
        String format = stored.path("format").asText();
        boolean assessed = format.equals(ResultWriter.ASSESSED);
        boolean thisFormat = assessed || format.equals(ResultWriter.FORMAT);
        String version = stored.path("libraryVersion").asText();
        boolean sameVersion = version.equals(libraryVersion) && thisFormat;
        boolean sameBytes = stored.path("designSha256").asText().equals(design.sha256());
        boolean sameContent = stored.path("designContentSha256")
                .asText()
                .equals(design.hashes().content());
        boolean sameDesign = sameBytes || sameContent;
        List<String> identity = new ArrayList<>();
        identity.add("format            " + text(stored, "format")
                + (thisFormat ? "" : "; this program writes " + ResultWriter.ASSESSED));
        identity.add("library version   " + text(stored, "libraryVersion")
                + (sameVersion ? "" : "; this is " + libraryVersion));
        identity.add("design SHA-256    " + text(stored, "designSha256")
                + (sameBytes ? ", as the design file" : "; the design file has " + design.sha256()));
        if (sameContent && !sameBytes) {
            identity.add(
                    "note              the design file holds the same as that one, by the hash of its content; its white"
                            + " space differs, or the SHA-256 above was altered");
        } else if (sameBytes && !sameContent && stored.has("designContentSha256")) {
            identity.add(
                    "note              the hash of the content that stands in the result is not that of the design file: one"
                            + " of the two hashes was altered");
        }

        Method method = method(stored);
        identity.add("method            " + method.label());
        Recomputed again = assessed ? assessment(design, method, stored) : stated(design, method);
        DesignRun run = again.run();
        byte[] bytes = again.bytes();
        JsonNode recomputed = tree(bytes);
        Comparison comparison = new Comparison(tolerance, !ours).run(stored, recomputed);
        List<StoredCheck> checks = ours ? StoredNumbers.check(design.design(), stored) : List.of();
        boolean broken = checks.stream().anyMatch(c -> !c.holds());
        Optional<List<String>> verified = verified(run, again.failedChecks());
        Verdict verdict;
        if (!ours) {
            verdict = Verdict.OTHER_PROGRAM;
        } else if (!sameDesign) {
            verdict = Verdict.OTHER_DESIGN;
        } else if (!comparison.missing().isEmpty() && sameVersion) {
            verdict = Verdict.INCOMPLETE;
        } else if (comparison.differences().isEmpty() && !broken) {
            verdict = sameVersion ? Verdict.REPRODUCED : Verdict.OTHER_VERSION_SAME_NUMBERS;
        } else {
            verdict = broken || sameVersion ? Verdict.ALTERED : Verdict.OTHER_VERSION;
        }
        if (verdict.isReproduced() && !verified.orElse(List.of()).isEmpty()) {
            verdict = Verdict.UNVERIFIED;
        }
        return new Outcome(verdict, identity, comparison.compared(), comparison.differences(), checks, verified);
    }

    /** What was computed anew, and the file that it makes. */
    @SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
    private record Recomputed(DesignRun run, byte[] bytes, List<String> failedChecks) {}

    private Recomputed stated(DesignFile design, Method method) {
        DesignRun run = DesignRun.of(
                design.design(),
                DesignAnalysis.withDefaults().withMethod(method).withProgress(listener));
        byte[] bytes = new ResultWriter(libraryVersion, design.sha256())
                .write(run, CriteriaCheck.evaluate(run, design.criteria()));
        return new Recomputed(run, bytes, List.of());
    }

    /** The whole assessment, with or without arrests in time as the stored one. */
    private Recomputed assessment(DesignFile design, Method method, JsonNode stored) {
        boolean moving =
                !stored.path("assessment").path("motion").path("scope").asText().equals(MotionScope.LEFT_OUT.words());
        Assessment plain = Assessment.withDefaults()
                .withCriteria(design.criteria())
                .withBasis(design.basis())
                .withProgress(listener);
        Assessment chosen = executor == null ? plain : plain.withExecutor(executor);
        AssessedRun assessed = AssessedRun.of(design.design(), moving ? chosen : chosen.withoutMotion());
        if (method == Method.TRANSIENT) {
            assessed = new AssessedRun(
                    DesignRun.of(
                            design.design(),
                            DesignAnalysis.withDefaults().withMethod(method).withProgress(listener)),
                    assessed.assessment());
        }
        DesignRun run = assessed.run();
        byte[] bytes = new ResultWriter(libraryVersion, design.sha256())
                .write(
                        assessed.handingOver(design.handover()),
                        CriteriaCheck.evaluate(run, design.criteria()),
                        IndependentCheck.of(run.arrests()),
                        ResultProvenance.of("", Map.of(), design.hashes().content()));
        List<String> failed = assessed.assessment().checks().stream()
                .filter(c -> !c.passed())
                .map(c -> "assessment, " + c.fallCase().describe() + ": "
                        + c.failures().get(0))
                .toList();
        return new Recomputed(run, bytes, failed);
    }

    /** The method by which at least half of the arrests say that they were computed; one alone may have been altered. */
    private static Method method(JsonNode stored) {
        int moving = 0;
        int resting = 0;
        for (JsonNode arrest : stored.path("arrests")) {
            if (arrest.path("method").asText().equals(Method.TRANSIENT.label())) {
                moving++;
            } else {
                resting++;
            }
        }
        return moving > 0 && moving >= resting ? Method.TRANSIENT : Method.ENERGY_BALANCE;
    }

    private static List<String> failures(ArrestResult arrest) {
        return Verifier.withDefaults().arrest(arrest).failures().stream()
                .map(String::valueOf)
                .toList();
    }

    private static String text(JsonNode node, String key) {
        return Optional.ofNullable(node.path(key).textValue()).orElse("not stated");
    }

    private static JsonNode tree(byte[] bytes) {
        try {
            return new ObjectMapper().readTree(bytes);
        } catch (IOException e) {
            throw new IllegalStateException("what was just written can be read", e);
        }
    }

    private Optional<List<String>> verified(DesignRun run, List<String> ofAssessment) {
        List<String> failures = new ArrayList<>(ofAssessment);
        int checked = ofAssessment.size();
        for (int i = 0; i < run.arrests().size(); i++) {
            if (run.arrests().get(i).method() == Method.ENERGY_BALANCE) {
                checked++;
                String where = "arrests[" + i + "]: ";
                independentCheck.apply(run.arrests().get(i)).forEach(f -> failures.add(where + f));
            }
        }
        return checked > 0 ? Optional.of(failures) : Optional.empty();
    }
}
