package org.lifeline.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.base.GivenValue;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.IndependentCheck;
import org.lifeline.design.assessment.MotionScope;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultProvenance;
import org.lifeline.file.result.ResultWriter;

/**
 * The result file of an assessed design: format {@code org.lifeline.result/2}, SI numbers (m, N, J, kg; temperatures in °C),
 * unrounded. It names the design by its SHA-256, the version that computed it and the Java runtime, and no date: the same
 * design gives the same file. {@link org.lifeline.file.reproduce.Reproduction} checks it later.
 *
 * <p>The independent check of the arrests is made when the file is drawn up, and stands in it; {@link #failedChecks()} must be
 * empty before the numbers are used. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ResultFile {
    private final DesignFile file;
    private final AssessedRun assessed;
    private final org.lifeline.file.result.IndependentCheck check;

    private ResultFile(DesignFile file, AssessedRun assessed) {
        this.file = file;
        this.assessed = assessed;
        this.check = org.lifeline.file.result.IndependentCheck.of(assessed.run().arrests());
    }

    /**
     * The result file of an assessment.
     *
     * @param file the design file as read
     * @param assessment the assessment of its design, with the file's criteria and basis
     * @return the result file
     * @throws org.lifeline.base.InvalidInputException if the assessment is on another basis than the file states
     * @throws org.lifeline.base.NoEquilibriumException if a stated fall has no equilibrium, or the line as installed has none
     * @throws java.util.concurrent.CancellationException if the assessment was ended before every stated fall was computed
     */
    public static ResultFile of(DesignFile file, AssessmentResult assessment) {
        new Violations()
                .require(
                        assessment.basis() == file.basis(),
                        "basis",
                        GivenValue.text(assessment.basis().key()),
                        FileRule.NOT_OF_DESIGN,
                        file.basis().key())
                .throwIfAny();
        return new ResultFile(file, new AssessedRun(DesignRun.of(assessment.stated()), assessment));
    }

    /**
     * The same with the stated falls computed another way, for example in time.
     *
     * @param stated the stated falls of the same design
     * @return the new result file
     * @throws org.lifeline.base.NoEquilibriumException if a stated fall has no equilibrium
     * @throws java.util.concurrent.CancellationException if the analysis was ended before every stated fall was computed
     */
    public ResultFile withStated(DesignResult stated) {
        return new ResultFile(file, new AssessedRun(DesignRun.of(stated), assessed.assessment()));
    }

    /**
     * The file.
     *
     * @return JSON in UTF-8
     */
    public byte[] bytes() {
        return new ResultWriter(LibraryVersion.text(), file.sha256())
                .write(
                        assessed.handingOver(file.handover()),
                        CriteriaCheck.evaluate(assessed.run(), file.criteria()),
                        check,
                        provenance());
    }

    private ResultProvenance provenance() {
        AssessmentResult assessment = assessed.assessment();
        Map<String, String> options = new LinkedHashMap<>();
        options.put("method", method());
        options.put("motion", assessment.motion() == MotionScope.LEFT_OUT ? "left out" : "followed");
        options.put("basis", assessment.basis().key());
        return ResultProvenance.of(
                LibraryVersion.commit(), options, file.hashes().content());
    }

    private String method() {
        Optional<ArrestResult> first = assessed.run().arrests().stream().findFirst();
        return first.isPresent() && first.get().method() == Method.TRANSIENT ? "transient" : "energy-balance";
    }

    /**
     * What failed of the independent check, of the stated falls and of what governs.
     *
     * @return one sentence for each; empty if nothing failed; unmodifiable
     */
    public List<String> failedChecks() {
        return Stream.concat(
                        check.failedLines().stream(),
                        assessed.assessment().checks().stream()
                                .filter(c -> !c.passed())
                                .flatMap(ResultFile::sentences))
                .toList();
    }

    private static Stream<String> sentences(IndependentCheck check) {
        return check.failures().stream().map(f -> check.fallCase().describe() + ": " + f);
    }
}
