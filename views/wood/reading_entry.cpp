#include "views/wood/reading_entry.h"

#include "models/domain/quantities/units.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/wood/stock.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/wood_words.h"

#include <QComboBox>
#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>

#include <vector>

namespace rickyard::views {

using domain::Face;
using domain::MeterBasis;
using domain::Moisture;
using domain::MoistureReading;

namespace {

// The mean is worth this much: two points of dry-basis moisture either way.
constexpr double kWantedPoints = 2.0;

std::vector<double> dryPercents(const domain::PieceMoistures &pieces)
{
    std::vector<double> values;
    for (Moisture piece : pieces)
        values.push_back(100 * domain::dryFraction(piece));
    return values;
}

} // namespace

ReadingEntry::ReadingEntry(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context)
{
    build();
    showPieces();
}

void ReadingEntry::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(new TextLabel(tr("Log a moisture reading"), TextStyle::Heading));
    m_field = new UnitLineEdit;
    m_field->setUnits({QStringLiteral("% dry"), QStringLiteral("% wet")});
    m_field->setUnit(QStringLiteral("% dry"));
    m_field->setAccessibleName(tr("Meter reading of the next piece"));
    m_field->installEventFilter(this);
    m_row = new FieldRow(tr("Next piece, as the meter shows it"), m_field);
    m_row->setHelp(tr("Split a piece, read the fresh face, press Enter. The unit is the basis of "
                      "the meter: dry is water over dry wood, wet is water over all."));
    column->addWidget(m_row);
    connect(m_field, &UnitLineEdit::unitChanged, this, [this](const QString &unit) {
        // The figures are what the meter showed; only their meaning changes.
        m_field->setUnit(unit);
        showPieces();
    });
    connect(m_field, &QLineEdit::textEdited, this, [this] { m_row->clearProblem(); });
    m_chipHolder = new QWidget(this);
    m_chips = new FlowLayout(m_chipHolder);
    m_chips->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_chipHolder);
    m_mean = new TextLabel(QString(), TextStyle::BodyStrong);
    m_mean->setWordWrap(true);
    m_spread = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_spread->setWordWrap(true);
    column->addWidget(m_mean);
    column->addWidget(m_spread);
    m_face = new QComboBox;
    m_face->addItems(
        {tr("Fresh inner face"), tr("Old face (reads low)"), tr("End grain (unreliable)")});
    m_face->setAccessibleName(tr("Face read"));
    column->addWidget(new FieldRow(tr("Face read"), m_face));
    auto *buttons = new QHBoxLayout;
    m_save = new QPushButton(tr("Save reading"));
    m_save->setAccessibleName(tr("Save the moisture reading"));
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close the reading without saving"));
    buttons->addWidget(m_save);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(m_save, &QPushButton::clicked, this, &ReadingEntry::save);
    connect(close, &QPushButton::clicked, this, &ReadingEntry::closed);
}

void ReadingEntry::start(domain::RecordId lot)
{
    if (lot != m_lot) {
        m_shown.clear();
        m_field->clear();
    }
    m_lot = lot;
    m_row->clearProblem();
    showPieces();
    m_field->setFocus(Qt::OtherFocusReason);
}

MeterBasis ReadingEntry::basis() const
{
    return m_field->unit() == QStringLiteral("% wet") ? MeterBasis::WetBasis : MeterBasis::DryBasis;
}

domain::PieceMoistures ReadingEntry::pieces() const
{
    domain::PieceMoistures pieces;
    for (double value : m_shown)
        pieces << (basis() == MeterBasis::WetBasis ? domain::moistureFromWetFraction(value / 100)
                                                   : domain::moistureFromDryFraction(value / 100));
    return pieces;
}

QString ReadingEntry::summary() const
{
    return QString(m_mean->text() + QLatin1Char(' ') + m_spread->text());
}

bool ReadingEntry::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_field && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            takePiece();
            return true;
        }
        if (key == Qt::Key_Backspace && m_field->text().isEmpty() && !m_shown.isEmpty()) {
            dropPiece(static_cast<int>(m_shown.size()) - 1);
            return true;
        }
        if (key == Qt::Key_Escape) {
            Q_EMIT closed();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void ReadingEntry::takePiece()
{
    const QString text = m_field->text().trimmed();
    if (text.isEmpty()) {
        m_row->setProblem(m_shown.isEmpty() ? tr("Type what the meter shows, such as 18.5.")
                                            : QString());
        return;
    }
    QString figure = text;
    figure.remove(QLatin1Char('%'));
    bool ok = false;
    const double value = woodLocale().toDouble(figure.trimmed(), &ok);
    // Wet basis cannot reach 100 %; dry basis can go beyond it, but not this far.
    const double most = basis() == MeterBasis::WetBasis ? 75 : 250;
    if (!ok || value < 0 || value > most) {
        m_row->setProblem(
            tr("“%1” is not a reading. Expected a number from 0 to %2.").arg(text).arg(most));
        return;
    }
    m_row->clearProblem();
    m_shown << value;
    m_field->clear();
    showPieces();
}

void ReadingEntry::dropPiece(int index)
{
    if (index < 0 || index >= m_shown.size())
        return;
    m_shown.removeAt(index);
    showPieces();
    m_field->setFocus(Qt::OtherFocusReason);
}

void ReadingEntry::showPieces()
{
    while (QLayoutItem *item = m_chips->takeAt(0)) {
        // A chip may be the sender of the click that takes it away.
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
    for (int i = 0; i < m_shown.size(); ++i) {
        const QString figure = domain::formatNumber(m_shown.at(i), 1, woodLocale());
        auto *chip =
            new QPushButton(icon(QStringLiteral("close"), Role::InkMuted), figure, m_chipHolder);
        chip->setProperty("role", "quiet");
        chip->setLayoutDirection(Qt::RightToLeft);
        chip->setAccessibleName(tr("Piece %1: %2 %. Take it away").arg(i + 1).arg(figure));
        connect(chip, &QPushButton::clicked, this, [this, i] { dropPiece(i); });
        m_chips->addWidget(chip);
        chip->show();
    }
    m_chipHolder->setVisible(!m_shown.isEmpty());
    m_chipHolder->updateGeometry();
    showSummary();
}

void ReadingEntry::showSummary()
{
    const std::vector<double> values = dryPercents(pieces());
    m_save->setEnabled(!values.empty() && !m_context.readOnly());
    if (values.empty()) {
        m_mean->setText(tr("No piece read yet."));
        m_spread->setText(tr("Read at least three pieces from different places in the rick."));
        return;
    }
    const auto mean = domain::statistics::mean(values);
    const Moisture middle = domain::moistureFromDryFraction(mean.value() / 100);
    const bool dry = middle <= domain::kDryEnough;
    m_mean->setText(
        tr("Mean %1: %2.")
            .arg(bothBases(middle), dry ? tr("dry enough to burn") : tr("too wet to burn clean")));
    const auto sd = domain::statistics::sampleSd(values);
    const auto interval = domain::statistics::meanInterval(values, 0.95);
    if (!sd.ok() || !interval.ok()) {
        m_spread->setText(tr("One piece says nothing of the spread. Read at least three."));
        return;
    }
    QString words =
        tr("%1 pieces, spread %2 points (standard deviation), mean ± %3 points at "
           "95 %, dry basis.")
            .arg(values.size())
            .arg(domain::formatNumber(sd.value(), 1, woodLocale()),
                 domain::formatNumber(interval->upper - interval->centre, 1, woodLocale()));
    const auto needed = domain::statistics::sampleSizeForMean(sd.value(), kWantedPoints);
    const int more = needed.ok() ? needed.value() - static_cast<int>(values.size()) : 0;
    if (sd.value() > 0 && more > 0)
        words += QString(QLatin1Char(' ') +
                         tr("Split about %1 more for ± %2 points.").arg(more).arg(kWantedPoints));
    m_spread->setText(words);
}

void ReadingEntry::save()
{
    if (!m_field->text().trimmed().isEmpty()) {
        takePiece();
        if (m_row->hasProblem())
            return;
    }
    MoistureReading reading;
    reading.lot = m_lot;
    reading.time = m_context.verbs.now();
    reading.basis = basis();
    reading.face = static_cast<Face>(m_face->currentIndex());
    reading.pieces = pieces();
    const auto added = m_context.verbs.add(reading, tr("log moisture reading"));
    if (!added) {
        m_row->setProblem(added.message());
        return;
    }
    m_shown.clear();
    showPieces();
    m_context.say(tr("Reading saved. Undo takes it back."));
    Q_EMIT saved(added.value());
}

} // namespace rickyard::views
