MADE_FROM = '33aa2c7062427774ccc7456352ff4e8f46b9a90bec9603bfb44c122765962cab'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'parts/page.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    l_0_language = resolve('language')
    l_0_sheet = resolve('sheet')
    l_0_job = resolve('job')
    l_0_style = resolve('style')
    l_0_page_rule = resolve('page_rule')
    l_0__ = resolve('_')
    pass
    yield '<!DOCTYPE html>\n<html lang="'
    yield escape((undefined(name='language') if l_0_language is missing else l_0_language))
    yield '">\n<head>\n<meta charset="utf-8">\n<meta name="viewport" content="width=device-width, initial-scale=1">\n<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'; script-src \'unsafe-inline\'; img-src data:; font-src data:">\n<title>'
    yield escape((undefined(name='sheet') if l_0_sheet is missing else l_0_sheet))
    yield ' · '
    yield escape(environment.getattr((undefined(name='job') if l_0_job is missing else l_0_job), 'job'))
    yield '</title>\n<meta name="generator" content="trimlang">\n<style>\n'
    yield escape((undefined(name='style') if l_0_style is missing else l_0_style))
    yield '\n'
    yield escape((undefined(name='page_rule') if l_0_page_rule is missing else l_0_page_rule))
    yield '\n</style>\n</head>\n<body class="'
    yield from context.blocks['kind'][0](context)
    yield '" data-revision="'
    yield escape(environment.getattr((undefined(name='job') if l_0_job is missing else l_0_job), 'revision'))
    yield '">\n<header class="head">\n<h1>'
    yield escape((undefined(name='sheet') if l_0_sheet is missing else l_0_sheet))
    yield '</h1>\n<p class="job"><span class="job-name">'
    yield escape(environment.getattr((undefined(name='job') if l_0_job is missing else l_0_job), 'job'))
    yield '</span>'
    if environment.getattr((undefined(name='job') if l_0_job is missing else l_0_job), 'surveyed'):
        pass
        yield ' <span class="surveyed">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'surveyed {date}', date=environment.getattr((undefined(name='job') if l_0_job is missing else l_0_job), 'surveyed')))
        yield '</span>'
    yield ' <span class="revision">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'revision {revision}', revision=environment.getattr((undefined(name='job') if l_0_job is missing else l_0_job), 'revision')))
    yield '</span></p>\n</header>\n<main>\n'
    yield from context.blocks['body'][0](context)
    yield '</main>\n'
    yield from context.blocks['script'][0](context)
    yield '</body>\n</html>\n'

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass

def block_script(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass

blocks = {'kind': block_kind, 'body': block_body, 'script': block_script}
debug_info = '2=18&7=20&10=24&11=26&14=28&16=32&17=34&20=44&22=46&14=49&20=58&22=67'
