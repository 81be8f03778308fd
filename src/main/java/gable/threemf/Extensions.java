package gable.threemf;

import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The extensions that a part requires or recommends. One is supported here if Gable knows what an
 * edit of a mesh means for it, be it that the mesh is then left alone.
 *
 * @param unsupported the first required extension that Gable does not know
 * @param notices recommended extensions that Gable does not know
 */
record Extensions(Optional<Problem> unsupported, List<Problem> notices) {

  private static final Set<String> SUPPORTED =
      Set.of(
          Names.CORE,
          Names.MATERIAL,
          Names.PRODUCTION,
          Names.ALTERNATIVES,
          Names.SETS,
          Names.SLICE,
          Names.BEAMS,
          Names.BALLS);

  static Extensions of(PartFacts facts, ModelXml model, Map<String, String> prefixes)
      throws PackageException {
    List<Problem> required =
        unknown(facts, ModelRules.EXTENSION, model.requiredextensions, prefixes);
    List<Problem> recommended =
        unknown(facts, ModelRules.RECOMMENDED, model.recommendedextensions, prefixes);
    return new Extensions(required.stream().findFirst(), recommended);
  }

  private static List<Problem> unknown(
      PartFacts facts, Rule rule, @Nullable String list, Map<String, String> prefixes)
      throws PackageException {
    List<Problem> unknown = new ArrayList<>();
    for (String prefix : NumberText.words(list)) {
      String namespace = prefixes.get(prefix);
      if (namespace == null) {
        throw facts.fault(
            ModelRules.PREFIX, "model", "the undeclared prefix '" + prefix + "'", "a prefix");
      }
      if (!SUPPORTED.contains(namespace)) {
        unknown.add(
            new Problem(
                rule,
                Place.of(facts.name()).at("model"),
                "the extension " + prefix + " (" + namespace + "), which Gable does not support",
                "extensions that it supports"));
      }
    }
    return unknown;
  }
}
