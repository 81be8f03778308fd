// The peer of the whole-process benchmark: the 3MF consortium's reference library, as packaged by
// Debian (1.8, package lib3mf-dev), reads a file and writes it again, nothing else.
// Build: g++ -O2 -I/usr/include/lib3mf read_write.cpp -l3MF; run: read_write IN OUT.
#include <cstdio>

#include "Model/COM/NMR_DLLInterfaces.h"

namespace {

bool worked(LIB3MFRESULT result, const char *step) {
  if (result == LIB3MF_OK) return true;
  std::fprintf(stderr, "read_write: %s failed with 0x%lx\n", step, (unsigned long)result);
  return false;
}

}  // namespace

int main(int argc, char **argv) {
  if (argc != 3) {
    std::fprintf(stderr, "usage: read_write IN OUT\n");
    return 2;
  }
  NMR::PLib3MFModel *model = nullptr;
  NMR::PLib3MFModelReader *reader = nullptr;
  NMR::PLib3MFModelWriter *writer = nullptr;
  bool done = worked(NMR::lib3mf_createmodel(&model), "create") &&
              worked(NMR::lib3mf_model_queryreader(model, "3mf", &reader), "reader") &&
              worked(NMR::lib3mf_reader_readfromfileutf8(reader, argv[1]), "read") &&
              worked(NMR::lib3mf_model_querywriter(model, "3mf", &writer), "writer") &&
              worked(NMR::lib3mf_writer_writetofileutf8(writer, argv[2]), "write");
  return done ? 0 : 1;
}
