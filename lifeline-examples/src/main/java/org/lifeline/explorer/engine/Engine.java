package org.lifeline.explorer.engine;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.examples.arrests.AssessedRun;
import org.lifeline.examples.arrests.IndependentCheck;
import org.lifeline.examples.criteria.CriteriaCheck;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.ResultProvenance;
import org.lifeline.file.ResultWriter;
import org.teavm.jso.JSExport;

public final class Engine {
    private Engine() {}

    @JSExport
    public static String result(String text, boolean motion) {
            DesignFile design = new DesignReader().read(text.getBytes(StandardCharsets.UTF_8));
            Assessment assessment = Assessment.withDefaults().withCriteria(design.criteria()).withBasis(design.basis());
            AssessedRun run = AssessedRun.of(design.design(), motion ? assessment : assessment.withoutMotion());
            Map<String, String> options = new LinkedHashMap<>();
            byte[] bytes = new ResultWriter("x", design.sha256()).write(run, CriteriaCheck.evaluate(run.run(), design.criteria()), IndependentCheck.of(run.run().arrests()), ResultProvenance.of("c", options, design));
            return new String(bytes, StandardCharsets.UTF_8);
    }

}
