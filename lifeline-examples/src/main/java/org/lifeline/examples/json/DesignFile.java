package org.lifeline.examples.json;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.document.ProjectData;

/**
 * A design file that was read.
 *
 * <p>Immutable and thread-safe.
 *
 * @param design what the core computes
 * @param project what the calculation belongs to
 * @param criteria the criteria asked for, in the order of the file
 * @param written texts and quantities as they were written, by path, in the order of reading
 * @param sha256 SHA-256 of the bytes as read, in lower-case hexadecimal
 */
public record DesignFile(
        LifelineDesign design,
        ProjectData project,
        List<Criterion> criteria,
        Map<String, String> written,
        String sha256) {

    /** Copies the collections. */
    public DesignFile {
        criteria = List.copyOf(criteria);
        written = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(written));
    }

    /**
     * A value as it was written.
     *
     * @param path the path in the file, for example {@code workers[0].mass}
     * @return the text, if the file has this value
     */
    public Optional<String> written(String path) {
        return Optional.ofNullable(written.get(path));
    }
}
