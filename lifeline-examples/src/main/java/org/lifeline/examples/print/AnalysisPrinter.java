package org.lifeline.examples.print;

import java.util.List;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.criteria.CriterionResult;
import org.lifeline.examples.json.DesignFile;

public final class AnalysisPrinter {
    public AnalysisPrinter(DesignFile f, UnitChoice c) {}

    public String print(DesignRun run, List<CriterionResult> criteria) {
        return run.arrests().size() + " arrests\n";
    }
}
