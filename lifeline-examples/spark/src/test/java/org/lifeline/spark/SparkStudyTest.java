package org.lifeline.spark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.junit.jupiter.api.Test;
import org.lifeline.design.study.MonteCarloResult;
import org.lifeline.design.study.Sensitivity;
import org.lifeline.design.study.Summary;

class SparkStudyTest {
    private static final Path DESIGN = Path.of(
            "../../lifeline-examples/src/test/resources/org/lifeline/examples/independent/silo-roof-gripped-middle.design.json");

    private static List<String> bits(MonteCarloResult r) {
        List<String> list = new ArrayList<>(List.of(r.cases() + " " + r.failed() + " " + r.isComplete()));
        for (int i = 0; i < r.summaries().size(); i++) {
            Summary s = r.summaries().get(i);
            for (double x : new double[] {
                s.mean(), s.deviation(), s.smallest(), s.largest(), s.quantile(0.95).value(), r.determination(i)
            }) {
                list.add(Double.toHexString(x));
            }
            for (Sensitivity each : r.ranking(i)) {
                list.add(Double.toHexString(each.regression()) + Double.toHexString(each.rankCorrelation()));
            }
        }
        return list;
    }

    /** On two threads of Spark's local mode, in seven parts that Spark puts together as they come. */
    @Test
    void sparkGivesTheDigitsOfOneMachine() throws IOException {
        SparkStudy study = new SparkStudy(Files.readAllBytes(DESIGN), 5, 1000);
        MonteCarloResult onSpark;
        SparkConf local = new SparkConf()
                .setMaster("local[2]")
                .setAppName("lifeline")
                .set("spark.ui.enabled", "false")
                .set("spark.driver.host", "127.0.0.1")
                .set("spark.driver.bindAddress", "127.0.0.1");
        try (JavaSparkContext spark = new JavaSparkContext(local)) {
            onSpark = study.solve(spark, 7);
        }

        assertThat(onSpark.cases()).isEqualTo(1000);
        assertThat(onSpark.isComplete()).isTrue();
        assertThat(onSpark.summaries().get(0).deviation()).isPositive();
        assertThat(bits(onSpark)).isEqualTo(bits(study.solveHere()));
    }
}
