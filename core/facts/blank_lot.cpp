#include "core/facts/blank_lot.h"

#include <cassert>

namespace holdfast {

double dimensionalChange(Millimetres before, Millimetres after) {
    assert(before.value > 0);
    return static_cast<double>((after - before).value) / static_cast<double>(before.value) * 100.0;
}

} // namespace holdfast
