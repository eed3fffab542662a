// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The program as it is installed from this build, in a folder of its own for all tests of the program; and
// other programs run on it.

#include <QString>
#include <QStringList>

namespace holdfast::install_test {

struct Ran {
    bool isThere = false; // the program could be started
    int status = -1;
    QString out; // what it said, on both of its outputs
};

Ran run(const QString& program, const QStringList& words, const QString& inFolder = {});

// `cmake --install` of this build, done when first asked for. The folder of its bin, lib and share.
const QString& installedTree();
QString installed(const QString& path); // "share/applications/holdfast.desktop"

// The text of a file, unpacked where its name ends in .gz; empty where there is none.
QString textOf(const QString& path);

} // namespace holdfast::install_test

// Checkers of Debian's packages; tests/run.sh sees to it that they are there.
#define NEED_PROGRAM(name)                                                                                   \
    if (QStandardPaths::findExecutable(QStringLiteral(name)).isEmpty())                                      \
    GTEST_SKIP() << name " is not installed"
