// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Papers of a real shop, and the tools they are read back with: poppler (pdfinfo, pdftotext) for PDFs, zbar
// for codes, QtSvg as a general renderer. None of them knows how the papers were made.

#include "app/papers/bag_tag.h"
#include "app/papers/care_card_paper.h"
#include "app/papers/claim_ticket.h"
#include "app/papers/day_sheet.h"
#include "app/papers/paper_files.h"
#include "app/papers/roll_label.h"
#include "db/actions/shop_actions.h"
#include "tests/app/shop_fixture.h"

#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QSvgRenderer>

#include <cmath>

namespace holdfast::app::test {

inline QString outputOf(const QString& tool, const QStringList& arguments) {
    QProcess process;
    process.start(tool, arguments);
    if (!process.waitForFinished(60'000) || process.exitCode() != 0)
        return {};
    return QString::fromUtf8(process.readAllStandardOutput());
}

class PapersFixture : public ShopFixture {
protected:
    const ReckonedShop& shop() { return *desk().shop(); }
    void change(const std::function<void(ShopSettings&)>& how) {
        ShopSettings settings = shop().facts.settings;
        how(settings);
        valueOf(db::changeSettings(file(), settings));
    }
    // Everything that can be printed of an order and the usual roll.
    std::vector<Paper> allOf(OrderId order, RollId roll) {
        std::vector<Paper> papers = daySheet(shop());
        papers.push_back(claimTicket(shop(), order));
        papers.push_back(labelOfRoll(shop(), roll));
        for (const GarmentId garment : garmentsOf(order)) {
            papers.push_back(bagTag(shop(), garment));
            papers.push_back(careCardPaper(shop(), garment));
        }
        return papers;
    }
    // Garments on washed blanks, so that nothing holds them.
    std::vector<GarmentDraft> manyGarments(const UsualShop& usual, int count) {
        return std::vector<GarmentDraft>(static_cast<std::size_t>(count), aGarment(usual));
    }

    QString fileIn(const QString& name) const { return m_files.filePath(name); }

    QString pdfOf(const std::vector<Paper>& papers) {
        const QString path = fileIn(QStringLiteral("papers.pdf"));
        EXPECT_TRUE(writePapers(path, QStringLiteral("Papers"), papers, {}).ok());
        return path;
    }

    // As pdftotext reads them, one paper or many.
    QString textOf(const std::vector<Paper>& papers) {
        return outputOf(QStringLiteral("pdftotext"),
                        {QStringLiteral("-layout"), pdfOf(papers), QStringLiteral("-")});
    }

    // Pages of a PDF in points, as pdfinfo says them.
    static std::vector<QSizeF> pagesOf(const QString& pdf) {
        std::vector<QSizeF> pages;
        const QString info =
            outputOf(QStringLiteral("pdfinfo"), {QStringLiteral("-f"), QStringLiteral("1"),
                                                 QStringLiteral("-l"), QStringLiteral("999"), pdf});
        for (const QString& line : info.split(u'\n')) {
            const QStringList words = line.simplified().split(u' ');
            if (words.size() >= 6 && words[0] == QLatin1String("Page") && words[2] == QLatin1String("size:"))
                pages.emplace_back(words[3].toDouble(), words[5].toDouble());
        }
        return pages;
    }

    // Drawn by QtSvg, so many dots to the inch.
    static QImage pictureOf(const Paper& paper, double dots = 300) {
        const QByteArray svg = QByteArray::fromStdString(paperSvg(paper));
        const QSizeF size = paper.size * (dots / 25.4);
        QImage picture(size.toSize(), QImage::Format_RGB32);
        picture.fill(Qt::white);
        QPainter painter(&picture);
        QSvgRenderer(svg).render(&painter, QRectF(QPointF(0, 0), size));
        return picture;
    }

    // What zbar reads in the picture, sorted.
    QStringList codesIn(const QImage& picture) {
        const QString path = fileIn(QStringLiteral("picture.png"));
        picture.save(path);
        QStringList codes =
            outputOf(QStringLiteral("zbarimg"), {QStringLiteral("--raw"), QStringLiteral("-q"), path})
                .split(u'\n', Qt::SkipEmptyParts);
        codes.sort();
        return codes;
    }

    // Whether anything was drawn beyond the paper's edges.
    static bool staysOnPaper(const Paper& paper) {
        constexpr int kAround = 300; // tenths of a millimetre
        const QSize size = (paper.size * kTenthsOfMillimetre).toSize();
        QImage picture(size + QSize(2 * kAround, 2 * kAround), QImage::Format_RGB32);
        picture.fill(Qt::white);
        QPainter painter(&picture);
        painter.translate(kAround, kAround);
        PaperInk ink(painter, Letters::AsText);
        paper.draw(ink);
        painter.resetTransform();
        painter.fillRect(QRect(QPoint(kAround, kAround), size), Qt::white);
        painter.end();
        for (int y = 0; y < picture.height(); ++y)
            for (int x = 0; x < picture.width(); ++x)
                if ((picture.pixel(x, y) & 0xffffff) != 0xffffff)
                    return false;
        return true;
    }

    // In points, within half a millimetre: a PDF's page is in whole points.
    static bool isOfSize(const QSizeF& points, double width, double height) {
        return std::abs(points.width() / 72 * 25.4 - width) < 0.5 &&
               std::abs(points.height() / 72 * 25.4 - height) < 0.5;
    }

private:
    QTemporaryDir m_files;
};

} // namespace holdfast::app::test
