// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/made_up_language.h"

#include "core/trade/language.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QXmlStreamReader>

#include <algorithm>
#include <cmath>

namespace holdfast::app::test {

namespace {

constexpr double kLonger = 0.4;

QString keyOf(const QString& context, const QString& source) {
    return context + QStringLiteral(": ") + source;
}

const QRegularExpression& kept() {
    // Places for values, tags, entities and the mark of a key.
    static const QRegularExpression pattern(QStringLiteral(R"(%L?\d+|%L?n|\{\w+\}|</?\w+[^>]*>|&\w+;|&)"));
    return pattern;
}

bool isOfUnitsAlone(const QString& english) {
    static const QSet<QString> units{QStringLiteral("m"), QStringLiteral("mm"), QStringLiteral("kg"),
                                     QStringLiteral("h"), QStringLiteral("s"),  QStringLiteral("min"),
                                     QStringLiteral("C"), QStringLiteral("F")};
    static const QRegularExpression word(QStringLiteral(R"(\p{L}+)"));
    QString bare = english;
    bare.remove(kept());
    for (auto match = word.globalMatch(bare); match.hasNext();)
        if (!units.contains(match.next().captured()))
            return false;
    return true;
}

QString accented(const QString& english) {
    QString text = english;
    text.replace(u'…', u'⋯'); // so that what is shortened is told from what says so
    for (QChar& letter : text) {
        static const QString plain = QStringLiteral("aeiouyAEIOUY");
        static const QString dyed = QStringLiteral("äéïöúÿÄÉÏÖÚÝ");
        if (const qsizetype at = plain.indexOf(letter); at >= 0)
            letter = dyed[at];
    }
    return text;
}

// Words of five letters, as many letters as are wanted in all.
QString filling(int letters) {
    QString text;
    for (int at = 0; at < letters; ++at)
        text.append(at % 6 == 0 && letters > 2 ? u' ' : u'ë');
    return text;
}

} // namespace

QString writtenByLupdate(const QString& ts, const QStringList& more) {
    QProcess lupdate;
    lupdate.setWorkingDirectory(QStringLiteral(HOLDFAST_SOURCE_DIR));
    lupdate.start(QStringLiteral(HOLDFAST_LUPDATE),
                  QStringList{QStringLiteral("-tr-function-alias"),
                              QStringLiteral("QT_TRID_NOOP+=said,QT_TRID_NOOP+=phrase"),
                              QStringLiteral("-locations"), QStringLiteral("none"), QStringLiteral("core"),
                              QStringLiteral("db"), QStringLiteral("app"), QStringLiteral("-ts"), ts} +
                      more);
    EXPECT_TRUE(lupdate.waitForFinished(120'000)) << "Debian's qt6-l10n-tools has lupdate";
    EXPECT_EQ(lupdate.exitCode(), 0);
    return QString::fromUtf8(lupdate.readAllStandardError());
}

MadeUpLanguage::MadeUpLanguage(const QString& ts) {
    QFile file(ts);
    if (!file.open(QIODevice::ReadOnly))
        qFatal("%s cannot be read", qPrintable(ts));
    QXmlStreamReader reader(&file);
    QString context;
    QString id;
    while (!reader.atEnd()) {
        reader.readNext();
        if (!reader.isStartElement())
            continue;
        if (reader.name() == QLatin1String("name")) {
            context = reader.readElementText();
        } else if (reader.name() == QLatin1String("message")) {
            id = reader.attributes().value(QLatin1String("id")).toString();
            if (!id.isEmpty()) {
                m_known.insert(keyOf({}, id));
                m_texts.push_back(id);
            }
        } else if (reader.name() == QLatin1String("source")) {
            const QString source = reader.readElementText();
            m_known.insert(keyOf(context, source));
            m_texts.push_back(source);
        }
    }
    if (reader.hasError())
        qFatal("%s: %s", qPrintable(ts), qPrintable(reader.errorString()));
    std::ranges::sort(m_texts);
}

bool MadeUpLanguage::hasTextThatBegins(const QString& text) const {
    const auto found = std::ranges::lower_bound(m_texts, text);
    return found != m_texts.end() && found->startsWith(text);
}

QString MadeUpLanguage::translate(const char* context, const char* source, const char*, int count) const {
    const QLatin1String where(context != nullptr ? context : "");
    const QString text = QString::fromUtf8(source);
    if (where == QLatin1String("DatePatterns"))
        return text;
    if (where == QLatin1String("WindowLanguage") && text == QLatin1String("en"))
        return QStringLiteral("pl");
    if (!m_known.contains(keyOf(where, text))) {
        const QString asLupdateNamesIt = QString(where).remove(QStringLiteral("holdfast::app::"));
        const bool isAskedOnce = asLupdateNamesIt == where;
        if (!isAskedOnce && m_known.contains(keyOf(asLupdateNamesIt, text)))
            return {};                                            // it comes again by that name
        if (isAskedOnce && !where.startsWith(QLatin1Char('Q'))) { // Qt translates its own texts
            const std::lock_guard lock(m_lock);
            m_unknown.insert(keyOf(where, text));
        }
        return {};
    }
    const auto form =
        count < 0 ? std::string{source} : std::string{englishForm(source, static_cast<std::int64_t>(count))};
    return madeUp(QString::fromStdString(form));
}

QStringList MadeUpLanguage::unknown() const {
    const std::lock_guard lock(m_lock);
    QStringList all(m_unknown.begin(), m_unknown.end());
    all.sort();
    return all;
}

QString madeUp(const QString& english) {
    if (isOfUnitsAlone(english))
        return english;
    QString text;
    qsizetype at = 0;
    for (auto match = kept().globalMatch(english); match.hasNext();) {
        const auto each = match.next();
        text += accented(english.mid(at, each.capturedStart() - at)) + each.captured();
        at = each.capturedEnd();
    }
    text += accented(english.mid(at));
    QString bare = english;
    bare.remove(kept());
    const int longer = static_cast<int>(std::ceil(static_cast<double>(bare.size()) * kLonger));
    return QLatin1Char('[') + text + filling(longer - 2) + QLatin1Char(']');
}

QStringList plainWords(const QString& painted) {
    static const QRegularExpression word(QStringLiteral(R"(\p{L}[\p{L}\p{M}]+)"));
    QStringList found;
    for (auto match = word.globalMatch(painted); match.hasNext();) {
        const QString each = match.next().captured();
        if (std::ranges::all_of(each, [](QChar letter) { return letter.unicode() < 128; }))
            found.append(each);
    }
    return found;
}

} // namespace holdfast::app::test
