/** What OpenCV's glue makes out of text at run time, and the same made out of closures. */
const changes: readonly (readonly [from: string, to: string])[] = [
  [
    `return new Function("body","return function "+name+"() {\\n"+'    "use strict";'+"    return body.apply(this, arguments);\\n"+"};\\n")(body)`,
    'return {[name]:function(){return body.apply(this,arguments)}}[name]',
  ],
  [
    'return new Function("dynCall","rawFunction",body)(dynCall,rawFunction)',
    'return function(){return dynCall(rawFunction,...arguments)}',
  ],
  [
    'args1.push(invokerFnBody);var invokerFunction=new_(Function,args1).apply(null,args2);return invokerFunction',
    `return function(){if(arguments.length!==argCount-2)throwBindingError("function "+humanName+" called with "+arguments.length+" arguments, expected "+(argCount-2)+" args!");var destructors=needsDestructorStack?[]:null;var wired=[];if(isClassMethodFunc)wired.push(argTypes[1].toWireType(destructors,this));for(var i=0;i<argCount-2;++i)wired.push(argTypes[i+2].toWireType(destructors,arguments[i]));var rv=cppInvokerFunc(cppTargetFunc,...wired);if(needsDestructorStack)runDestructors(destructors);else for(var i=isClassMethodFunc?1:2;i<argTypes.length;++i)if(argTypes[i].destructorFunction!==null)argTypes[i].destructorFunction(wired[isClassMethodFunc?i-1:i-2]);if(returns)return argTypes[0].fromWireType(rv)}`,
  ],
  [
    'params.push(functionBody);var invokerFunction=new_(Function,params).apply(null,args);return __emval_addMethodCaller(invokerFunction)',
    `return __emval_addMethodCaller(function(handle,name,destructors,args){var offset=0;var read=[];for(var i=1;i<types.length;++i){read.push(types[i].readValueFromPointer(args+offset));offset+=types[i]["argPackAdvance"]}var rv=handle[name](...read);for(var i=1;i<types.length;++i)if(types[i]["deleteObject"])types[i].deleteObject(read[i-1]);if(!retType.isVoid)return retType.toWireType(destructors,rv)})`,
  ],
  // the program's bytes lie in the script itself: fetching them from a data address is what the page's policy refuses
  ['if(!wasmBinary&&(ENVIRONMENT_IS_WEB||ENVIRONMENT_IS_WORKER)&&typeof fetch==="function")', 'if(false)'],
];

/**
 * OpenCV's script without code made from text, which the app's content policy forbids: it may compile WebAssembly
 * ('wasm-unsafe-eval') and nothing else. Throws when a place to change is not found once, as after an update.
 */
export function opencvWithoutEval(script: string): string {
  let changed = script;
  for (const [from, to] of changes) {
    const parts = changed.split(from);
    if (parts.length !== 2)
      throw new Error(`OpenCV's script has changed: ${from.slice(0, 60)} is there ${parts.length - 1} times`);
    changed = parts.join(to);
  }
  return changed;
}
