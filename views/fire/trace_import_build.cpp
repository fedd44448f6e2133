// How the dialog for a probe's log is put together; what it does is in trace_import_dialog.cpp.
#include "views/fire/fire_words.h"
#include "views/fire/trace_import_dialog.h"
#include "views/fire/trace_mapping_form.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QStandardItemModel>
#include <QTableView>
#include <QTimeZone>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

TraceImportDialog::TraceImportDialog(PageContext &context, domain::RecordId cook, QWidget *parent)
    : QDialog(parent), m_context(context)
{
    const Theme &look = theme(this);
    setWindowTitle(tr("Import the log of a probe"));
    setAcceptDrops(true);
    resize(look.px(1080), look.px(700));
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(4));
    column->setSpacing(look.space(3));
    column->addWidget(buildTop());
    m_notice = new NoticeBar(this);
    column->addWidget(m_notice);
    auto *middle = new QHBoxLayout;
    middle->setSpacing(look.space(5));
    middle->addWidget(buildLeft(), 2);
    middle->addWidget(buildRight(), 3);
    column->addLayout(middle, 1);
    column->addWidget(buildBottom());
    connectJob();
    fillCooks(cook);
    fillProfiles();
    setState(State::NoFile);
}

void TraceImportDialog::connectJob()
{
    m_soon.setSingleShot(true);
    m_soon.setInterval(250);
    m_writePoll.setInterval(80);
    connect(&m_soon, &QTimer::timeout, this, &TraceImportDialog::readNow);
    connect(&m_writePoll, &QTimer::timeout, this, [this] {
        if (m_write) {
            m_progress->setRange(0, m_write->total);
            m_progress->setValue(m_write->written);
        }
    });
    connect(&m_job, &TraceImportJob::opened, this, &TraceImportDialog::takeFile);
    connect(&m_job, &TraceImportJob::wasRead, this, &TraceImportDialog::takeLog);
    connect(&m_job, &TraceImportJob::compared, this, &TraceImportDialog::write);
    connect(&m_job, &TraceImportJob::progressed, this, [this](qint64 done, qint64 total) {
        m_progress->setRange(0, total > 0 ? 1000 : 0);
        m_progress->setValue(total > 0 ? static_cast<int>(1000.0 * static_cast<double>(done) /
                                                          static_cast<double>(total))
                                       : 0);
    });
    connect(m_form, &TraceMappingForm::changed, this, &TraceImportDialog::readSoon);
    connect(m_form, &TraceMappingForm::layoutChanged, this, [this] {
        const exchange::ProbeLogMapping mapping = m_form->mapping();
        guessAnew(mapping.headerLine, mapping.separator);
    });
}

QWidget *TraceImportDialog::buildTop()
{
    const Theme &look = theme(this);
    auto *top = new QWidget;
    auto *row = new QHBoxLayout(top);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    m_choose = new QPushButton(icon(QStringLiteral("import")), tr("Choose a file…"));
    m_choose->setAccessibleName(tr("Choose the log of a probe"));
    m_choose->setAutoDefault(false);
    connect(m_choose, &QPushButton::clicked, this, &TraceImportDialog::chooseFile);
    m_fileName = new TextLabel(tr("No file chosen"), TextStyle::Heading);
    m_fileName->setTextInteractionFlags(Qt::NoTextInteraction);
    m_fileName->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_cooks = new QComboBox;
    m_cooks->setAccessibleName(tr("Cook that the log belongs to"));
    m_profiles = new QComboBox;
    m_profiles->setAccessibleName(tr("Mapping to start from"));
    for (QComboBox *one : {m_cooks, m_profiles}) {
        one->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        one->setMinimumContentsLength(22);
    }
    connect(m_cooks, &QComboBox::activated, this, [this] { useProfile(profile()); });
    connect(m_profiles, &QComboBox::activated, this, [this] { useProfile(profile()); });
    row->addWidget(m_choose);
    row->addWidget(m_fileName, 1);
    row->addWidget(new TextLabel(tr("Cook"), TextStyle::Label, Role::InkMuted));
    row->addWidget(m_cooks);
    row->addWidget(new TextLabel(tr("Mapping"), TextStyle::Label, Role::InkMuted));
    row->addWidget(m_profiles);
    return top;
}

QWidget *TraceImportDialog::buildLeft()
{
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto *inner = new QWidget;
    auto *column = new QVBoxLayout(inner);
    column->setContentsMargins(0, 0, theme(this).space(3), 0);
    m_guess = new TextLabel(tr("Choose a file, or drop it here; its columns are guessed, and you "
                               "say what is wrong."),
                            TextStyle::Caption, Role::InkMuted);
    m_guess->setWordWrap(true);
    column->addWidget(m_guess);
    QTimeZone zone(m_context.books().yard().timeZone.toUtf8());
    m_form = new TraceMappingForm(zone.isValid() ? zone : QTimeZone::utc());
    column->addWidget(m_form, 1);
    scroll->setWidget(inner);
    // Nothing of it is cut: it scrolls down only.
    scroll->setMinimumWidth(inner->minimumSizeHint().width() + theme(this).px(20));
    return scroll;
}

QWidget *TraceImportDialog::buildRight()
{
    const Theme &look = theme(this);
    auto *right = new QWidget;
    auto *column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(new TextLabel(tr("The first rows, as understood"), TextStyle::Heading));
    m_preview = new QStandardItemModel(this);
    m_previewView = new QTableView;
    m_previewView->setModel(m_preview);
    m_previewView->setAccessibleName(tr("The first rows as understood"));
    m_previewView->setShowGrid(false);
    m_previewView->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_previewView->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_previewView->setTabKeyNavigation(false);
    m_previewView->setWordWrap(false);
    m_previewView->verticalHeader()->hide();
    m_previewView->verticalHeader()->setDefaultSectionSize(look.px(30));
    column->addWidget(m_previewView, 1);
    auto *head = new QHBoxLayout;
    head->addWidget(new TextLabel(tr("The whole file"), TextStyle::Heading));
    m_verdict = new StatusPill(Role::Info, QString());
    head->addWidget(m_verdict);
    head->addStretch(1);
    column->addLayout(head);
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setAccessibleName(tr("Report on the whole file"));
    m_report = new TextLabel(QString(), TextStyle::Body);
    m_report->setWordWrap(true);
    m_report->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_report->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    m_report->setAccessibleName(tr("Report on the whole file"));
    scroll->setWidget(m_report);
    column->addWidget(scroll, 1);
    return right;
}

QWidget *TraceImportDialog::buildBottom()
{
    const Theme &look = theme(this);
    auto *bottom = new QWidget;
    auto *row = new QHBoxLayout(bottom);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(2));
    m_profileName = new QLineEdit;
    m_profileName->setPlaceholderText(tr("Name of this mapping"));
    m_profileName->setAccessibleName(tr("Name of this mapping"));
    m_profileName->setMaximumWidth(look.px(220));
    m_saveProfile = new QPushButton(tr("Save mapping"));
    m_saveProfile->setAccessibleName(tr("Save the mapping under this name"));
    m_saveProfile->setAutoDefault(false);
    connect(m_saveProfile, &QPushButton::clicked, this,
            [this] { saveProfile(m_profileName->text()); });
    m_progress = new QProgressBar;
    m_progress->setAccessibleName(tr("Progress"));
    m_stop = new QPushButton(tr("Stop"));
    m_stop->setAccessibleName(tr("Stop; nothing is changed"));
    m_stop->setAutoDefault(false);
    connect(m_stop, &QPushButton::clicked, this, &TraceImportDialog::stop);
    m_import = new QPushButton(tr("Import"));
    m_import->setProperty("role", "primary");
    m_import->setAccessibleName(tr("Import the log into the cook"));
    connect(m_import, &QPushButton::clicked, this, &TraceImportDialog::startImport);
    m_close = new QPushButton(tr("Close"));
    m_close->setAccessibleName(tr("Close"));
    m_close->setAutoDefault(false);
    connect(m_close, &QPushButton::clicked, this, &QWidget::close);
    row->addWidget(m_profileName);
    row->addWidget(m_saveProfile);
    row->addWidget(m_progress, 1);
    row->addStretch();
    row->addWidget(m_stop);
    row->addWidget(m_close);
    row->addWidget(m_import);
    return bottom;
}

// The latest first, as most logs are of the cook that just ended.
void TraceImportDialog::fillCooks(domain::RecordId first)
{
    const domain::Books &books = m_context.books();
    QVector<domain::Cook> cooks(books.cooks.cbegin(), books.cooks.cend());
    std::sort(cooks.begin(), cooks.end(),
              [](const domain::Cook &a, const domain::Cook &b) { return a.lit > b.lit; });
    const FireWords words(books);
    for (const domain::Cook &cook : std::as_const(cooks))
        m_cooks->addItem(cook.name.trimmed().isEmpty()
                             ? cookTitle(books, cook)
                             : tr("%1, %2").arg(cookTitle(books, cook), words.day(cook.lit)),
                         QVariant::fromValue<qint64>(cook.id));
    chooseCook(first);
}

void TraceImportDialog::fillProfiles()
{
    const QVariant kept = m_profiles->currentData();
    m_profiles->clear();
    m_profiles->addItem(tr("As guessed from the file"), QVariant::fromValue<qint64>(0));
    for (const domain::ImportProfile &saved : m_context.books().importProfiles)
        if (saved.kind == QLatin1String(exchange::kTraceProfileKind))
            m_profiles->addItem(saved.name, QVariant::fromValue<qint64>(saved.id));
    m_profiles->setCurrentIndex(qMax(0, m_profiles->findData(kept)));
}

} // namespace rickyard::views
