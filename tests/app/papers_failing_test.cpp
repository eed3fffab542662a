// SPDX-License-Identifier: GPL-3.0-or-later
// Papers on a disk that fails at any one call: the older file of that name is there, whole, until the new one
// is.
#include "app/desk/formats.h"
#include "app/papers/paper_files.h"
#include "db/disk/new_file.h"
#include "tests/db/failing_disk.h"
#include "tests/db/journal_fixture.h"

#include <gtest/gtest.h>

#include <cerrno>

namespace holdfast::app::test {
namespace {

using db::testing::bytesOf;
using db::testing::DiskCall;
using db::testing::FailingDisk;

Paper aPaper() {
    Paper paper;
    paper.name = QStringLiteral("claim-ticket-1");
    paper.size = QSizeF(80, 60);
    paper.draw = [](PaperInk&) {};
    return paper;
}

class FailingPapers : public ::testing::Test {
protected:
    Result<Done> written(bool asPdf) {
        const QString path = words(m_path.string());
        if (!asPdf)
            return writeText(path, "the new one");
        const std::vector<Paper> papers{aPaper()};
        const auto drawn = writePapers(path, QStringLiteral("Papers"), papers, {});
        return drawn.ok() ? Result<Done>{Done{}} : Result<Done>{drawn.error()};
    }

    // Whether a call failed; the paper is the older one, or wholly written.
    bool fail(bool asPdf, int error, long at) {
        db::testing::writeBytes(m_path, "the older one");
        std::string said;
        bool hasFailed = false;
        {
            const FailingDisk disk{{{DiskCall::Write, DiskCall::Sync, DiskCall::Rename, DiskCall::Open,
                                     DiskCall::Unlink, DiskCall::Truncate, DiskCall::Make},
                                    at,
                                    error}};
            const auto outcome = written(asPdf);
            said = outcome.ok() ? "kept" : outcome.error().message.english();
            hasFailed = FailingDisk::hasFailed();
        }
        const std::string kept = bytesOf(m_path);
        if (said == "kept") {
            EXPECT_TRUE(asPdf ? kept.starts_with("%PDF") && kept.find("%%EOF") != std::string::npos
                              : kept == "the new one");
        } else {
            EXPECT_EQ(kept, "the older one") << said;
        }
        db::removeLeftOver(m_folder.path());
        EXPECT_EQ(m_folder.names(), std::vector<std::string>{"paper"}) << said;
        return hasFailed;
    }

    db::testing::TemporaryFolder m_folder;
    const std::filesystem::path m_path = m_folder / "paper";
};

TEST_F(FailingPapers, AreTheOlderOneOrTheNewOne) {
    ASSERT_TRUE(written(true).ok()); // loads what drawing needs, which is no part of it
    int failures = 0;
    for (const bool asPdf : {false, true})
        for (const int error : {EIO, ENOSPC})
            for (long at = 1; fail(asPdf, error, at); ++at) {
                SCOPED_TRACE(at);
                ++failures;
            }
    EXPECT_GT(failures, 12);
}

TEST_F(FailingPapers, WhatAKilledProgramLeftIsGoneWithTheNextPaper) {
    db::testing::writeBytes(m_folder / "paper.holdfast-new-99999", "half a pap");
    ASSERT_TRUE(written(false).ok());
    EXPECT_EQ(m_folder.names(), std::vector<std::string>{"paper"});
}

} // namespace
} // namespace holdfast::app::test
