#include "views/wood/meter_fields.h"

#include "models/domain/wood/meter.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/piece_chips.h"
#include "views/wood/reading_words.h"
#include "views/wood/wood_words.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::MeterBasis;
using domain::Moisture;
using domain::MoistureReading;
using domain::TableId;

namespace {

TextLabel *wrappedText(TextStyle style, Role role)
{
    auto *label = new TextLabel(QString(), style, role);
    label->setWordWrap(true);
    return label;
}

// The meter is seldom set to another scale: as it was at the last reading, else as the yard says.
QString usualScale(const domain::Books &books)
{
    const MoistureReading *last = nullptr;
    for (const MoistureReading &reading : books.readings)
        if (!reading.scale.isEmpty() && (last == nullptr || reading.time > last->time))
            last = &reading;
    return last != nullptr ? last->scale : books.yard().meterScale;
}

std::optional<double> figureOf(const QString &text)
{
    QString figure = text;
    figure.remove(QLatin1Char('%'));
    bool ok = false;
    const double value = woodLocale().toDouble(figure.trimmed(), &ok);
    return ok ? std::optional(value) : std::nullopt;
}

} // namespace

MeterFields::MeterFields(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_fields(new FieldSet(context, TableId::MoistureReading, this))
{
    build();
    showSummary();
}

void MeterFields::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_chips = new PieceChips(tr("Next piece, as the meter shows it"),
                             {QStringLiteral("% dry"), QStringLiteral("% wet")});
    m_chips->field()->setAccessibleName(tr("Meter reading of the next piece"));
    m_chips->row()->setHelp(tr("Split a piece, read the fresh face, Enter. Dry is water over dry "
                               "wood, wet is water over all."));
    m_chips->setReader(figureOf);
    m_chips->setJudge(
        [this](const QString &text, std::optional<double> value) { return judge(text, value); });
    m_chips->setMarked([this](double shown) { return isIndicative(dryOf(shown)); });
    column->addWidget(m_chips);
    m_mean = wrappedText(TextStyle::BodyStrong, Role::Ink);
    m_corrected = wrappedText(TextStyle::BodyStrong, Role::Ink);
    m_spread = wrappedText(TextStyle::Body, Role::InkMuted);
    m_indicative = wrappedText(TextStyle::Caption, Role::InkMuted);
    for (TextLabel *label : {m_mean, m_corrected, m_spread, m_indicative})
        column->addWidget(label);
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(look.space(3));
    grid->setVerticalSpacing(look.space(2));
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    FieldRow *temperature =
        m_fields->add(QStringLiteral("wood_temperature"), tr("Wood temperature"));
    if (auto *edit = qobject_cast<UnitLineEdit *>(
            m_fields->editor(QStringLiteral("wood_temperature"))->inner()))
        edit->setUnits({QStringLiteral("°F"), QStringLiteral("°C")});
    grid->addWidget(temperature, 0, 0, Qt::AlignTop);
    m_scale = new QComboBox;
    m_scale->setEditable(true);
    m_scale->setInsertPolicy(QComboBox::NoInsert);
    m_scale->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_scale->setMinimumContentsLength(8);
    for (domain::MeterScale scale : domain::meterScales())
        m_scale->addItem(domain::scaleName(scale));
    m_scale->setAccessibleName(tr("Scale of the meter"));
    m_scale->lineEdit()->setAccessibleName(tr("Scale of the meter"));
    m_scale->lineEdit()->setPlaceholderText(tr("Not known"));
    m_scaleRow = new FieldRow(tr("Meter scale"), m_scale);
    grid->addWidget(m_scaleRow, 0, 1, Qt::AlignTop);
    grid->addWidget(m_fields->add(QStringLiteral("face")), 1, 0, 1, 2, Qt::AlignTop);
    column->addLayout(grid);
    column->addStretch(1);
    const auto told = [this] {
        showSummary();
        Q_EMIT changed();
    };
    connect(m_chips, &PieceChips::changed, this, told);
    connect(m_chips, &PieceChips::escaped, this, &MeterFields::escaped);
    connect(m_fields, &FieldSet::edited, this, told);
    connect(m_scale, &QComboBox::currentTextChanged, this, told);
}

domain::Books MeterFields::books() const
{
    return m_books ? m_books() : m_context.books();
}

void MeterFields::start(domain::RecordId lot)
{
    m_lot = lot;
    m_impossible.clear();
    m_chips->clear();
    m_fields->show(domain::emptyRow(TableId::MoistureReading));
    m_scale->setCurrentText(usualScale(m_context.books()));
    showSummary();
}

MeterBasis MeterFields::basis() const
{
    return m_chips->field()->unit() == QStringLiteral("% wet") ? MeterBasis::WetBasis
                                                               : MeterBasis::DryBasis;
}

Moisture MeterFields::dryOf(double shown) const
{
    return basis() == MeterBasis::WetBasis ? domain::moistureFromWetFraction(shown / 100)
                                           : domain::moistureFromDryFraction(shown / 100);
}

domain::PieceMoistures MeterFields::pieces() const
{
    domain::PieceMoistures pieces;
    for (double value : m_chips->values())
        pieces << dryOf(value);
    return pieces;
}

MoistureReading MeterFields::reading(domain::Instant time) const
{
    domain::Row row = domain::emptyRow(TableId::MoistureReading);
    (void)m_fields->readInto(row);
    auto reading = domain::fromRow<MoistureReading>(row);
    reading.lot = m_lot;
    reading.time = time;
    reading.basis = basis();
    reading.scale = m_scale->currentText().trimmed();
    reading.pieces = pieces();
    if (!reading.pieces.isEmpty())
        keepTyped(reading.typed, QStringLiteral("pieces"), m_chips->asTyped());
    return reading;
}

bool MeterFields::isEmpty() const
{
    return m_chips->isEmpty();
}

QString MeterFields::summary() const
{
    QStringList parts;
    for (const TextLabel *label : {m_mean, m_corrected, m_spread, m_indicative})
        if (!label->text().isEmpty())
            parts << label->text();
    return parts.join(QLatin1Char(' '));
}

QString MeterFields::judge(const QString &text, std::optional<double> value) const
{
    if (text.isEmpty())
        return tr("Type what the meter shows, such as 18.5.");
    // Wet basis cannot reach 100 %; dry basis can go beyond it, but not this far.
    const double most = basis() == MeterBasis::WetBasis ? 75 : 250;
    if (!value || *value < 0 || *value > most)
        return tr("“%1” is not a reading. Expected a number from 0 to %2.").arg(text).arg(most);
    return overMaximum(books(), m_lot, dryOf(*value));
}

bool MeterFields::settle()
{
    domain::Row row = domain::emptyRow(TableId::MoistureReading);
    const domain::Problems unread = m_fields->readInto(row);
    m_fields->showProblems(unread);
    return m_chips->settle() && unread.isEmpty() && m_impossible.isEmpty();
}

domain::Problems MeterFields::showProblems(const domain::Problems &problems)
{
    domain::Problems elsewhere;
    for (const domain::Problem &problem : m_fields->showProblems(problems)) {
        if (problem.field == QStringLiteral("pieces"))
            m_chips->row()->setProblem(problem.message);
        else if (problem.field == QStringLiteral("scale"))
            m_scaleRow->setProblem(problem.message);
        else
            elsewhere.append(problem);
    }
    return elsewhere;
}

void MeterFields::refresh()
{
    showSummary();
}

void MeterFields::showSummary()
{
    const domain::Books all = books();
    const MoistureReading read = reading(m_context.verbs.now());
    const ReadingWords words = readingWords(all, read);
    const auto say = [](TextLabel *label, const QString &text) {
        label->setText(text);
        label->setVisible(!text.isEmpty());
    };
    say(m_mean, words.mean);
    say(m_corrected, words.corrected);
    say(m_spread, words.spread);
    say(m_indicative, words.indicative);
    showScaleHelp();
    // Another basis or another wood can make a piece impossible that was taken before.
    QString impossible;
    for (Moisture piece : read.pieces)
        if (impossible.isEmpty())
            impossible = overMaximum(all, m_lot, piece);
    if (!impossible.isEmpty() || !m_impossible.isEmpty())
        m_chips->row()->setProblem(impossible);
    m_impossible = impossible;
}

void MeterFields::showScaleHelp()
{
    const QString scale = m_scale->currentText().trimmed();
    QString help;
    if (!scale.isEmpty() && !m_context.books().yard().correctSpecies)
        help = tr("Kept with the reading. The yard has the correction for species switched off.");
    else if (!scale.isEmpty() && !domain::scaleOf(scale))
        help = tr("No table for this scale: not corrected for the species.");
    m_scaleRow->setHelp(help);
}

} // namespace rickyard::views
