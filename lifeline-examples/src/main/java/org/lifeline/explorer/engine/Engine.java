package org.lifeline.explorer.engine;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.IndependentCheck;
import org.lifeline.file.result.ResultProvenance;
import org.lifeline.file.result.ResultWriter;
import org.teavm.jso.JSExport;

/**
 * What a page asks of the library: texts in, texts out. Every answer is a JSON object. It carries {@code refused}, a list of
 * violations, where the design is not as it must be, and {@code failed}, a sentence, where no equilibrium was found.
 */
public final class Engine {
    private Engine() {}

    /**
     * The arrests of one fall by energy balance, with both deployment forces, and the line as installed.
     *
     * @param design a design file
     * @param fall number of the fall in it, from 0
     * @param temperature temperature [°C]; NaN for that of the installation
     * @return shapes, loads, distances, account of clearance and warnings
     */
    @JSExport
    public static String arrest(String design, int fall, double temperature) {
        return answer(() -> LiveAnswer.whole(read(design).design(), fall, temperature));
    }

    /**
     * The same results without shapes, for a curve.
     *
     * @param design a design file
     * @param fall number of the fall in it, from 0
     * @param temperature temperature [°C]; NaN for that of the installation
     * @return loads and distances
     */
    @JSExport
    public static String numbers(String design, int fall, double temperature) {
        return answer(() -> LiveAnswer.numbers(read(design).design(), fall, temperature));
    }

    /**
     * One fall followed in time.
     *
     * @param design a design file
     * @param fall number of the fall in it, from 0
     * @param temperature temperature [°C]; NaN for that of the installation
     * @param clearance true for the clearance deployment force, false for the maximum one
     * @param refinements how often the mesh may be halved; below 2 nothing is known of the error
     * @return histories, peaks and the ratio to the energy balance
     */
    @JSExport
    public static String inTime(String design, int fall, double temperature, boolean clearance, int refinements) {
        return answer(() -> MotionAnswer.of(
                LiveAnswer.at(read(design).design(), fall),
                new MotionAnswer.Request(temperature, clearance, refinements)));
    }

    /**
     * The result file of a design with its assessment, the same as the command line writes.
     *
     * @param design a design file
     * @param motion whether arrests are followed in time
     * @param version version of the library
     * @param commit state of the source
     * @param runtime what computes, for the provenance
     * @return the result file
     */
    @JSExport
    public static String result(String design, boolean motion, String version, String commit, String runtime) {
        return answer(() -> {
            DesignFile file = read(design);
            Assessment assessment =
                    Assessment.withDefaults().withCriteria(file.criteria()).withBasis(file.basis());
            AssessedRun run = AssessedRun.of(file.design(), motion ? assessment : assessment.withoutMotion());
            Map<String, String> options = new LinkedHashMap<>();
            options.put("method", "energy-balance");
            options.put("motion", motion ? "followed" : "left out");
            options.put("basis", file.basis().key());
            byte[] bytes = new ResultWriter(version, file.sha256())
                    .write(
                            run,
                            CriteriaCheck.evaluate(run.run(), file.criteria()),
                            IndependentCheck.of(run.run().arrests()),
                            new ResultProvenance(
                                    commit, runtime, options, file.hashes().content()));
            return new String(bytes, StandardCharsets.UTF_8);
        });
    }

    private static DesignFile read(String design) {
        return new DesignReader().read(design.getBytes(StandardCharsets.UTF_8));
    }

    private static String answer(Supplier<String> work) {
        try {
            return work.get();
        } catch (InvalidInputException e) {
            List<Json> list = new ArrayList<>();
            e.violations()
                    .forEach(v -> list.add(new Json()
                            .put("path", v.path())
                            .put("value", v.value())
                            .put("rule", v.rule())));
            return new Json().put("refused", list).toString();
        } catch (NoEquilibriumException e) {
            return new Json().put("failed", String.valueOf(e.getMessage())).toString();
        }
    }
}
