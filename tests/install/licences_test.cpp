// Each file of ours says its licence, and what is bundled and linked is listed with its own.

#include "app/shell/made_with.h"
#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QStandardPaths>

namespace holdfast::install_test {
namespace {

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
