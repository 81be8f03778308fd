package gable.validate;

import gable.threemf.Names;
import java.util.HashSet;
import java.util.Set;

/** Triangle sets of one part. Source: core specification 1.4, section 4.1.5. */
final class SetChecks implements Checker {

  private final MeshChecks meshes;
  private final Findings findings;
  private final Set<String> identifiers = new HashSet<>();

  SetChecks(MeshChecks meshes, Findings findings) {
    this.meshes = meshes;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    if (element.is(Names.SETS, "trianglesets")) {
      identifiers.clear();
    } else if (element.is(Names.SETS, "triangleset")) {
      set(element);
    } else if (element.is(Names.SETS, "ref")) {
      member(element, element.index("index"), element.index("index"));
    } else if (element.is(Names.SETS, "refrange")) {
      member(element, element.index("startindex"), element.index("endindex"));
    }
  }

  private void set(Element set) {
    String identifier = set.value("identifier").orElse("").strip();
    if (!identifiers.add(identifier)) {
      String found = "the identifier '" + identifier + "' a second time in the mesh";
      findings.add(CoreRules.SET_TWICE, set, found, "an identifier of its own");
    }
    if (set.value("name").map(String::isBlank).orElse(false)) {
      findings.add(CoreRules.SET_NAME, set, "a triangle set with an empty name", "a name");
    }
  }

  private void member(Element member, int first, int last) {
    int triangles =
        meshes.lists(member.parent().parent().parent()).map(MeshLists::triangleCount).orElse(0);
    if (first > last || last >= triangles) {
      String found = "triangles " + first + " to " + last;
      String expected = "some of the " + triangles + " triangles of the mesh, ascending";
      findings.add(CoreRules.SET_MEMBER, member, found, expected);
    }
  }
}
