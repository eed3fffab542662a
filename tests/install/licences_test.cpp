// SPDX-License-Identifier: GPL-3.0-or-later
// Each file of ours says its licence, and what is bundled and linked is listed with its own.

#include "app/shell/made_with.h"
#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QStandardPaths>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>

namespace holdfast::install_test {
namespace {

namespace fs = std::filesystem;

constexpr std::array kOurs = {".cpp", ".h", ".cmake", ".sh", ".sql", ".py", ".mjs"};
constexpr std::array kFolders = {"app", "core", "db", "tests"};
// The licence is said first; in a script, below the line that says what runs it.
constexpr int kLinesLookedAt = 2;

bool isOurs(const fs::path& file) {
    return file.filename() == "CMakeLists.txt" ||
           std::ranges::any_of(kOurs, [&](const char* ending) { return file.extension() == ending; });
}

bool saysItsLicence(const fs::path& path) {
    std::ifstream file(path);
    std::string line;
    for (int at = 0; at < kLinesLookedAt && std::getline(file, line); ++at)
        if (line.find("SPDX-License-Identifier: GPL-3.0-or-later") != std::string::npos)
            return true;
    return false;
}

TEST(Licences, EachFileOfOursSaysItsLicence) {
    int files = 0;
    const fs::path top = HOLDFAST_SOURCE_DIR;
    const auto look = [&](const fs::path& path) {
        ++files;
        EXPECT_TRUE(saysItsLicence(path)) << path << " has no line SPDX-License-Identifier: GPL-3.0-or-later";
    };
    look(top / "CMakeLists.txt");
    for (const char* folder : kFolders)
        for (const auto& entry : fs::recursive_directory_iterator(top / folder))
            if (entry.is_regular_file() && isOurs(entry.path()))
                look(entry.path());
    EXPECT_GT(files, 1000);
}

TEST(Licences, TextOfOursIsTheOneThatDebianHas) {
    EXPECT_EQ(textOf(QStringLiteral(HOLDFAST_SOURCE_DIR "/docs/licences/GPL-3.0-or-later.txt")),
              textOf(QStringLiteral("/usr/share/common-licenses/GPL-3")));
}

TEST(Licences, WhatIsUsedIsListedWithItsLicence) {
    const QString list = textOf(QStringLiteral(HOLDFAST_SOURCE_DIR "/docs/licences.md"));
    auto parts = app::librariesUsed();
    parts += app::fontsBundled();
    for (const app::MadeWith& part : parts) {
        bool isListed = false;
        for (const QString& row : list.split(QLatin1Char('\n')))
            isListed = isListed || (row.startsWith(QStringLiteral("| ") + part.name) &&
                                    row.contains(part.licence, Qt::CaseInsensitive));
        EXPECT_TRUE(isListed) << part.name.toStdString() << ", " << part.licence.toStdString();
    }
}

TEST(Licences, BundledFontsComeWithTheirText) {
    for (const app::MadeWith& font : app::fontsBundled())
        EXPECT_TRUE(textOf(font.text).contains(QStringLiteral("SIL OPEN FONT LICENSE Version 1.1")))
            << font.name.toStdString();
    EXPECT_TRUE(textOf(app::ownLicenceText()).contains(QStringLiteral("GNU GENERAL PUBLIC LICENSE")));
    const QString packed = textOf(installed(QStringLiteral("share/doc/holdfast/copyright")));
    EXPECT_TRUE(packed.contains(QStringLiteral("SIL OPEN FONT LICENSE Version 1.1")));
}

} // namespace
} // namespace holdfast::install_test
