package org.lifeline.file.result;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the numbers of a result file come from, beside the version of the library. No date: the same design gives the same
 * file.
 *
 * <p>Immutable and thread-safe.
 *
 * @param commit the state of the source that the program was built from, or "unknown"
 * @param jdk the Java runtime that computed
 * @param options what was asked for, by name
 * @param contentSha256 SHA-256 of what stands in the design file, without white space
 */
public record ResultProvenance(String commit, String jdk, Map<String, String> options, String contentSha256) {
    /** Copies the options. */
    public ResultProvenance {
        options = Collections.unmodifiableMap(new LinkedHashMap<>(options));
    }

    /**
     * The provenance of a result that this program computes now.
     *
     * @param commit the state of the source
     * @param options what was asked for
     * @param contentSha256 SHA-256 of what stands in the design file, without white space
     * @return the provenance
     */
    public static ResultProvenance of(String commit, Map<String, String> options, String contentSha256) {
        String jdk =
                System.getProperty("java.vm.name", "unknown") + " " + System.getProperty("java.vm.version", "unknown");
        return new ResultProvenance(commit, jdk, options, contentSha256);
    }
}
