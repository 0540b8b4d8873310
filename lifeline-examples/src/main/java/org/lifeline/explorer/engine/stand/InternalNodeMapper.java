package org.lifeline.explorer.engine.stand;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BaseJsonNode;
import org.lifeline.file.json.JsonText;

/** Stands in for the JSON library's own way to print a tree, which rests on reflection. */
public final class InternalNodeMapper {
    private InternalNodeMapper() {}

    /**
     * A tree in one line.
     *
     * @param node the tree
     * @return the text
     */
    public static String nodeToString(BaseJsonNode node) {
        return JsonText.compact(node);
    }

    /**
     * A tree with one value a line.
     *
     * @param node the tree
     * @return the text
     */
    public static String nodeToPrettyString(BaseJsonNode node) {
        return JsonText.pretty((JsonNode) node);
    }
}
