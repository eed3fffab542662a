// SPDX-License-Identifier: GPL-3.0-or-later
// What the checks of a large shop take, in seconds of the processor and in memory: 20,000 orders, every row
// of which has its history; or, with a number of entries as an argument, so many of them.

#include "db/check/check.h"
#include "tests/bench/large_shop.h"

#include <sys/resource.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>

namespace holdfast::bench {
namespace {

double processorSeconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) / 1e9;
}

long peakMegabytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return usage.ru_maxrss / 1024;
}

void say(const char* what, double seconds, std::size_t findings) {
    std::printf("%s: %.2f s of the processor, at most %ld MB in all, %zu findings\n", what, seconds,
                peakMegabytes(), findings);
}

int measure(std::int64_t entries, int orders) {
    std::string name = (std::filesystem::temp_directory_path() / "holdfast-check-XXXXXX").string();
    const std::filesystem::path folder = mkdtemp(name.data());
    const auto path = folder / "large.holdfast";
    makeLargeShop(path, orders);
    const std::int64_t written = writeHistory(path, entries);
    std::printf("A shop of %d orders, %lld entries, %ju MB\n", orders, static_cast<long long>(written),
                std::filesystem::file_size(path) >> 20);
    auto shop = db::Shop::openReadOnly(path, [] { return largeShopNow().instant; });
    if (!shop.ok()) {
        std::printf("%s\n", shop.error().message.english().c_str());
        return EXIT_FAILURE;
    }
    double before = processorSeconds();
    const auto quick = db::checkQuickly(**shop);
    say("The quick check", processorSeconds() - before,
        quick.ok() ? quick->unread.size() + quick->sentences.size() : 999);
    before = processorSeconds();
    std::string part;
    double partSince = before;
    const auto whole = db::checkShop(**shop, [&](double, Phrase words) {
        if (words != part) {
            const double now = processorSeconds();
            if (!part.empty())
                std::printf("  %s: %.2f s\n", part.c_str(), now - partSince);
            part = words;
            partSince = now;
        }
        return true;
    });
    say("The whole check", processorSeconds() - before, whole.ok() ? whole->size() : 999);
    for (std::size_t at = 0; whole.ok() && at < whole->size() && at < 5; ++at)
        std::printf("  %s\n", (*whole)[at].c_str());
    shop->reset();
    std::filesystem::remove_all(folder);
    return EXIT_SUCCESS;
}

} // namespace
} // namespace holdfast::bench

int main(int argc, char** argv) {
    return holdfast::bench::measure(argc > 1 ? std::atoll(argv[1]) : 0,
                                    argc > 2 ? std::atoi(argv[2]) : holdfast::bench::kOrders);
}
