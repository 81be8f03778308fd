package gable.opc;

/** What can keep a result from being written. */
final class WriteRules {

  static final Rule FOLDER_MISSING =
      Rule.error("output-folder-missing", "practice", "make the folder first");
  static final Rule IS_FOLDER =
      Rule.error("output-is-a-folder", "practice", "name a file in that folder");
  static final Rule NOT_A_FILE =
      Rule.error("output-not-a-file", "practice", "name a file, or - for the standard output");
  static final Rule PROTECTED =
      Rule.error("output-write-protected", "practice", "allow writing or choose another name");
  static final Rule FAILED =
      Rule.error(
          "output-cannot-be-written",
          "practice",
          "check the rights and the free space, then retry");
  static final Rule LINK_LOOP =
      Rule.error(
          "output-link-loop", "practice", "repair the symbolic links or choose another name");
  static final Rule TOO_LARGE =
      Rule.error("output-too-large", "ZIP APPNOTE 4.4.9", "split the model into several files");

  private WriteRules() {}
}
