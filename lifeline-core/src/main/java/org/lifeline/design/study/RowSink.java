package org.lifeline.design.study;

/**
 * Takes the rows of a study as they come, in the order of the cases, in the thread that started the study.
 *
 * @since 1.0.0
 */
@FunctionalInterface
public interface RowSink {
    /**
     * Takes the next row.
     *
     * @param row the row
     */
    void take(StudyRow row);

    /**
     * A sink that keeps nothing.
     *
     * @return the sink
     */
    static RowSink none() {
        return row -> {};
    }
}
