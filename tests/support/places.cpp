#include "tests/support/places.h"

namespace ringhold::test {

std::filesystem::path sourceFolder() {
    return RINGHOLD_SOURCE_DIR;
}

std::filesystem::path programFile() {
    return RINGHOLD_BINARY;
}

} // namespace ringhold::test
