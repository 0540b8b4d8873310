package org.lifeline.examples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.ResultFile;
import org.lifeline.file.reproduce.Reproduction;

/** Reads a design file, assesses the design, stores the result, and reproduces it from the two files. */
public final class StoredAssessment {
    private StoredAssessment() {}

    /**
     * Assesses a design.
     *
     * @param args the design file, and where the result goes
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = new DesignReader().read(Files.readAllBytes(Path.of(args[0])));
        AssessmentResult assessment = Assessment.withDefaults()
                .withCriteria(file.criteria())
                .withBasis(file.basis())
                .solve(file.design());
        ResultFile result = ResultFile.of(file, assessment);
        if (!result.failedChecks().isEmpty()) {
            throw new IllegalStateException("not to be used: " + result.failedChecks());
        }
        // A file that is there already is not replaced; it might be the design.
        Files.write(Path.of(args[1]), result.bytes(), StandardOpenOption.CREATE_NEW);
        System.out.println(Reproduction.withDefaults()
                .check(file, Files.readAllBytes(Path.of(args[1])))
                .verdict()
                .text());
    }
}
