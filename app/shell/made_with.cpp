// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/made_with.h"

#include <sodium.h>
#include <sqlite3.h>

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class MadeWithWords {
    Q_DECLARE_TR_FUNCTIONS(MadeWith)
};

MadeWith font(const QString& name, const QString& from, const QString& text) {
    return {name, {}, from, QStringLiteral("OFL-1.1"), text};
}

} // namespace

QVector<MadeWith> librariesUsed() {
    const QString qt = QString::fromLatin1(qVersion());
    return {
        {QStringLiteral("Qt"),
         qt,
         MadeWithWords::tr("the window, drawing and PDF"),
         QStringLiteral("LGPL-3.0-only or GPL-2.0-only"),
         {}},
        {QStringLiteral("Qt Charts"),
         qt,
         MadeWithWords::tr("the chart of a storage place’s air"),
         QStringLiteral("GPL-3.0-or-later"),
         {}},
        {QStringLiteral("SQLite"),
         QString::fromLatin1(sqlite3_libversion()),
         MadeWithWords::tr("the shop file"),
         MadeWithWords::tr("public domain"),
         {}},
        {QStringLiteral("libsodium"),
         QString::fromLatin1(sodium_version_string()),
         MadeWithWords::tr("hashes of what was done"),
         QStringLiteral("ISC"),
         {}},
        {QStringLiteral("libqrencode"),
         QStringLiteral(HOLDFAST_QRENCODE_VERSION),
         MadeWithWords::tr("codes on papers"),
         QStringLiteral("LGPL-2.1-or-later"),
         {}},
        {QStringLiteral("libcups"),
         QStringLiteral(HOLDFAST_CUPS_VERSION),
         MadeWithWords::tr("printers"),
         QStringLiteral("Apache-2.0 with an exception for GPL-2.0"),
         {}},
        {QStringLiteral("libcanberra"),
         QStringLiteral(HOLDFAST_CANBERRA_VERSION),
         MadeWithWords::tr("sound"),
         QStringLiteral("LGPL-2.1-or-later"),
         {}},
    };
}

QVector<MadeWith> fontsBundled() {
    return {font(QStringLiteral("Holdfast Sans"), MadeWithWords::tr("made from Atkinson Hyperlegible Next"),
                 QStringLiteral(":/licences/OFL-AtkinsonHyperlegibleNext.txt")),
            font(QStringLiteral("Holdfast Serif"), MadeWithWords::tr("made from Vollkorn"),
                 QStringLiteral(":/licences/OFL-Vollkorn.txt"))};
}

QString ownLicenceText() {
    return QStringLiteral(":/licences/GPL-3.0-or-later.txt");
}

} // namespace holdfast::app
